package logcsv

import (
	"bufio"
	"encoding/csv"
	"fmt"
	"io"
	"reflect"
	"slices"
	"strings"
	"time"

	"chargehand/model/entry"
)

// Lost counts the entries that a table could not hold. Entries about the
// journal itself (keys, settings, testimony and the like) are not counted:
// nothing happened at the furnace by them.
type Lost struct {
	Entries int // had no place at all
	Partly  int // lost a part, as the gate of a blast or the lot of an ore
}

// Write writes the entries in force of one smelt, strikes and amendments
// already applied, a row for each group of one moment. Remarks of the light
// stand at the top. It gives what was lost (see the package comment), and an
// error only when w does.
func Write(w io.Writer, entries []entry.Entry) (Lost, error) {
	entries = slices.Clone(entries)
	slices.SortStableFunc(entries, func(a, b entry.Entry) int { return a.Happened.Compare(b.Happened) })
	t := newTable(entries)
	for _, e := range entries {
		t.add(e)
	}
	bw := bufio.NewWriter(w)
	if err := t.write(bw); err != nil {
		return Lost{}, err
	}
	return t.lost, bw.Flush()
}

// timed is a row on the way out.
type timed struct {
	row
	at    time.Time
	group string
}

// table gathers the rows of a smelt.
type table struct {
	light   entry.Light
	zone    *time.Location
	vessels vessels
	shown   [columns]bool // which columns hold a number, or a measure that the light names
	rows    []timed
	lost    Lost
}

// newTable looks through the smelt for what all rows depend on.
func newTable(entries []entry.Entry) *table {
	t := &table{zone: time.UTC}
	if len(entries) > 0 {
		t.zone = entries[0].Happened.Location()
	}
	for _, e := range entries {
		if l, ok := e.Event.(entry.Light); ok {
			t.light, t.zone = l, e.Happened.Location()
			break
		}
	}
	t.vessels = vesselsOf(t.light.Measures)
	t.shown[colMeasures] = t.vessels.charcoal != ""
	t.shown[colScoops] = t.vessels.ore != ""
	if t.vessels.charcoal == "" {
		t.vessels.charcoal = firstCounted(entries, entry.Charcoal, DefaultMeasure)
	}
	if t.vessels.ore == "" {
		t.vessels.ore = firstCounted(entries, entry.Ore, DefaultScoop)
	}
	return t
}

// firstCounted gives the measure in which a material was first counted.
func firstCounted(entries []entry.Entry, what entry.What, otherwise string) string {
	for _, e := range entries {
		for _, p := range entry.PartsIn(e.Event) {
			if p.What == what && p.Count.Known && p.Measure != "" {
				return p.Measure
			}
		}
	}
	return otherwise
}

// add puts an entry into the row of its group and moment, or into a new one.
func (t *table) add(e entry.Entry) {
	at := e.Happened.In(t.zone).Truncate(time.Second)
	if e.Kind() == entry.KindLight {
		if len(t.rows) == 0 {
			t.rows = append(t.rows, timed{at: at}) // an empty row tells when the fire was lit
		}
		return
	}
	rows := rowsOf(e.Event, t.vessels)
	switch {
	case e.Event == nil, entry.TraitsOf(e.Event).CSV == entry.CSVJournal:
		return
	case len(rows) == 0:
		t.lost.Entries++
		return
	case len(rows) > 1, e.Uncertain != 0, !says(rows[0], t.vessels, e.Event):
		t.lost.Partly++
	}
	rows[0].note = joined(rows[0].note, sureNote(e.Sure))
	for _, r := range rows {
		for c, n := range r.cells {
			t.shown[c] = t.shown[c] || n.Known
		}
		t.put(r, at, e.Group)
	}
}

// sureNote is the mark of what was doubted and kept all the same, by the names on the
// wire: "sure: below floor".
func sureNote(sure string) string {
	if sure == "" {
		return ""
	}
	return "sure: " + strings.NewReplacer("_", " ", " ", ", ").Replace(sure)
}

// joined is two remarks, either of which may be none.
func joined(a, b string) string {
	if a == "" || b == "" {
		return a + b
	}
	return a + "; " + b
}

func (t *table) put(r row, at time.Time, group string) {
	for i, l := range slices.Backward(t.rows) {
		if !l.at.Equal(at) {
			break
		}
		if l.empty() || group != "" && l.group == group {
			if merged, ok := l.merge(r); ok {
				t.rows[i].row, t.rows[i].group = merged, group
				return
			}
		}
	}
	t.rows = append(t.rows, timed{row: r, at: at, group: group})
}

// says tells whether a row read back gives the event.
func says(r row, v vessels, ev entry.Event) bool {
	back := r.events(v)
	return len(back) == 1 && reflect.DeepEqual(plain(back[0]), plain(ev))
}

// plain brings events that mean the same to the same form: charcoal or ore that
// is not in a charge may be named with a nought or left out, one of which
// nothing is known may be left out of a charge without parts, and the blast is
// off by its volume or by word.
func plain(ev entry.Event) entry.Event {
	switch ev := ev.(type) {
	case entry.Fill:
		return entry.Fill{Parts: plainParts(ev.Parts)}
	case entry.Charge:
		return entry.Charge{Parts: plainParts(ev.Parts)}
	case entry.Blast:
		if ev.Off() {
			ev.State, ev.Volume = entry.BlastOff, entry.Some(entry.LitrePerMinute(0))
		}
		return ev
	}
	return ev
}

func plainParts(ps entry.Parts) entry.Parts {
	var out entry.Parts
	for _, p := range ps {
		inTable := p.What == entry.Charcoal || p.What == entry.Ore
		if unknown := p == (entry.Part{What: p.What}); inTable && (unknown || p.None()) {
			continue
		}
		out = append(out, p)
	}
	slices.SortStableFunc(out, func(a, b entry.Part) int { return strings.Compare(string(a.What), string(b.What)) })
	return out
}

// write writes remarks, names of the columns and rows.
func (t *table) write(w *bufio.Writer) error {
	if mark := markOf(t.light); mark != "" {
		if _, err := fmt.Fprintln(w, "# "+marked+mark); err != nil {
			return err
		}
	}
	for _, remark := range t.light.Source {
		if _, err := fmt.Fprintln(w, strings.TrimSpace("# "+plainText(remark))); err != nil {
			return err
		}
	}
	cw := csv.NewWriter(w)
	var order []column
	dates := t.dates()
	for c := range column(columns) {
		switch c {
		case colMeasures, colScoops, colHeight:
			if !t.shown[c] {
				continue
			}
		case colDate:
			if dates == nil {
				continue
			}
		}
		order = append(order, c)
	}
	record := make([]string, len(order))
	for i, c := range order {
		record[i] = c.String()
	}
	if err := cw.Write(record); err != nil {
		return err
	}
	for n, l := range t.rows {
		for i, c := range order {
			switch c {
			case colClock:
				record[i] = clockOf(l.at).String()
			case colEvent:
				record[i] = l.name()
			case colNote:
				record[i] = Harmless(l.note)
			case colDate:
				record[i] = dates[n]
			default:
				record[i] = format(l.cells[c])
			}
		}
		if err := cw.Write(record); err != nil {
			return err
		}
	}
	cw.Flush()
	return cw.Error()
}

// name is the event as the row is written.
func (l timed) name() string {
	switch {
	case l.event != "":
		return l.event
	case l.cells[colAir].Known:
		return evAir
	}
	return evNote
}
