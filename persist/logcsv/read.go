package logcsv

import (
	"encoding/csv"
	"errors"
	"fmt"
	"io"
	"slices"
	"strconv"
	"strings"
	"time"

	"chargehand/model/entry"
)

// Read reads a log to its end and gives its entries, numbered from 1, the
// light first; or it gives none and an *Error that names the line. Entries of
// an imported log have no boot clock: when things were known is not recorded.
func Read(r io.Reader, opt Options) ([]entry.Entry, error) {
	rd := reader{lines: newLines(r), opt: opt}
	log, c, fault := rd.read()
	if fault != nil {
		return nil, &Error{File: opt.Name, Line: max(rd.lines.n, 1), Column: c, What: fault.what, Do: fault.do, Err: fault.err}
	}
	return log.entries(opt), nil
}

// moment is a row with its time.
type moment struct {
	row
	day   int
	clock clock
}

// log is a file as it was read.
type log struct {
	moments []moment
	remarks []string
	light   entry.Light // why it counts for nothing, if it does
	first   time.Time   // the day 0; zero is unknown
	counted [columns]bool
	hash    string
}

// reader reads one file.
type reader struct {
	lines     *lines
	opt       Options
	order     []column // of the cells in a row
	semicolon bool
	calendar  calendar
	log       log
	remarked  int // bytes of remarks
}

// read gives the whole log, or the column at fault and what is wrong.
func (rd *reader) read() (log, string, *complaint) {
	if !rd.opt.Date.IsZero() {
		rd.calendar.first = midnight(rd.opt.Date)
	}
	for {
		line, more, fault := rd.lines.next()
		if fault != nil {
			return log{}, "", fault
		}
		if !more {
			break
		}
		if c, fault := rd.line(line); fault != nil {
			return log{}, c, fault
		}
	}
	if rd.order == nil {
		return log{}, "", noHeader()
	}
	if len(rd.log.moments) == 0 {
		return log{}, "", noRows()
	}
	rd.log.first = rd.calendar.first
	rd.log.hash = rd.lines.hash()
	return rd.log, "", nil
}

// line takes one line of the file: a remark, the names of the columns, a row
// or nothing.
func (rd *reader) line(line string) (string, *complaint) {
	if text, isRemark := strings.CutPrefix(line, "#"); isRemark {
		return "", rd.remark(strings.TrimSpace(text))
	}
	if strings.TrimSpace(line) == "" {
		return "", nil
	}
	if rd.order == nil {
		rd.semicolon = strings.Contains(line, ";")
	}
	cells, at, fault := rd.split(line)
	if fault != nil {
		return rd.columnName(at), fault
	}
	if strings.Join(cells, "") == "" {
		return "", nil
	}
	if rd.order == nil {
		return rd.header(cells)
	}
	switch n, want := len(cells), len(rd.order); {
	case n > want:
		return rd.columnName(want), tooManyCells(n, want)
	case n < want:
		return rd.columnName(n), tooFewCells(n, want)
	}
	c, fault := rd.row(cells)
	return c.String(), fault
}

func (rd *reader) remark(text string) *complaint {
	if fault := checkText(text); fault != nil {
		return fault
	}
	if rd.remarked += len(text) + 1; rd.remarked > MaxRemarks {
		return remarksTooLong()
	}
	if mark(text, &rd.log.light) {
		return nil // it is written anew from the light
	}
	rd.log.remarks = append(rd.log.remarks, text)
	return nil
}

// split gives the cells of a line, trimmed, or which cell is at fault, from 0.
func (rd *reader) split(line string) ([]string, int, *complaint) {
	cr := csv.NewReader(strings.NewReader(line))
	cr.TrimLeadingSpace = true // a blank before a quote
	if rd.semicolon {
		cr.Comma = ';'
	}
	cells, err := cr.Read()
	if errors.Is(err, io.EOF) {
		return nil, 0, nil
	}
	for i, text := range cells {
		cells[i] = strings.TrimSpace(text)
		if fault := checkText(cells[i]); fault != nil {
			return nil, i, fault
		}
	}
	if err != nil { // the cells before the broken one were given
		return nil, len(cells), openQuote()
	}
	return cells, 0, nil
}

// columnName names the i-th cell of a row, from 0, for an error.
func (rd *reader) columnName(i int) string {
	if i < len(rd.order) {
		return rd.order[i].String()
	}
	return strconv.Itoa(i + 1)
}

// header takes the names of the columns, or gives the one at fault.
func (rd *reader) header(cells []string) (string, *complaint) {
	var order []column
	for i, text := range cells {
		name := strings.ToLower(text)
		c, ok := columnNamed(name)
		if !ok {
			return rd.columnName(i), unknownColumn(text)
		}
		if slices.Contains(order, c) {
			return name, twiceNamed(name)
		}
		order = append(order, c)
		rd.log.counted[c] = true
	}
	for _, c := range []column{colClock, colEvent} {
		if !slices.Contains(order, c) {
			return c.String(), missingColumn(c)
		}
	}
	rd.order = order
	return "", nil
}

// row takes one row, or gives the column at fault.
func (rd *reader) row(cells []string) (column, *complaint) {
	var text [columns]string
	for i, c := range rd.order {
		text[c] = cells[i]
	}
	var m moment
	var fault *complaint
	if m.clock, fault = parseClock(text[colClock]); fault != nil {
		return colClock, fault
	}
	m.event = strings.ToLower(text[colEvent])
	if m.event == "" {
		return colEvent, noEvent()
	}
	if !slices.Contains(eventNames(), m.event) {
		return colEvent, unknownEvent(text[colEvent])
	}
	for c := range column(columns) {
		if !c.numeric() {
			continue
		}
		if m.cells[c], fault = c.parse(text[c], rd.semicolon); fault != nil {
			return c, fault
		}
	}
	if !m.charges() {
		for _, c := range []column{colCharcoal, colMeasures, colOre, colScoops} {
			if m.cells[c].Positive() { // a 0 is true of such a row and says nothing of it
				return c, notCharged(m.event)
			}
		}
	}
	m.note = asNoted(text[colNote])
	var c column
	if m.day, c, fault = rd.calendar.next(m.clock, text[colDate]); fault != nil {
		return c, fault
	}
	if len(rd.log.moments) == MaxRows {
		return none, tooManyRows()
	}
	rd.log.moments = append(rd.log.moments, m)
	return none, nil
}

// entries gives the entries of a log.
func (l log) entries(opt Options) []entry.Entry {
	zone := time.UTC
	if !l.first.IsZero() && opt.Location != nil {
		first := l.moments[0]
		zone = offsetAt(l.first.AddDate(0, 0, first.day), first.clock, opt.Location)
	}
	day0 := l.first
	if day0.IsZero() {
		day0 = Undated
	}
	measures := namedMeasures(opt.Measures, l.counted[colMeasures], l.counted[colScoops])
	v := vesselsOf(measures)
	var es []entry.Entry
	add := func(m moment, group string, ev entry.Event) {
		y, mon, d := day0.Date()
		e := entry.Entry{
			Version: entry.Version, Stream: opt.Stream, Seq: uint64(len(es) + 1),
			Happened: entry.Wall(time.Date(y, mon, d+m.day, 0, 0, int(m.clock), 0, zone)),
			Screen:   Screen, Group: group, Event: ev,
		}
		if !opt.Imported.IsZero() {
			e.Kept = entry.Wall(opt.Imported)
		}
		es = append(es, e)
	}
	add(l.moments[0], "", entry.Light{
		UID: opt.UID, Furnace: opt.Furnace, Measures: measures, Undated: l.first.IsZero(),
		Imported: true, Source: l.remarks, SourceHash: l.hash,
		Practice: l.light.Practice, Rehearsal: l.light.Rehearsal, Invented: l.light.Invented,
	})
	said := 0 // rows that say something
	for _, m := range l.moments {
		events := m.events(v)
		if len(events) == 0 {
			continue
		}
		said++
		group := ""
		if len(events) > 1 {
			group = fmt.Sprintf("row %d", said)
		}
		for _, ev := range events {
			add(m, group, ev)
		}
	}
	return es
}
