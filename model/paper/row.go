package paper

import (
	"slices"
	"strconv"
	"strings"
	"unicode"

	"chargehand/model/entry"
)

// MostRows bounds what is taken at a go.
const MostRows = 60

// Row is a row as it was read.
type Row struct {
	Minute int // of the day
	Event  entry.Event
	Text   string
}

// Fault says why a row was not read: what stands there, and in which way it is wrong.
type Fault struct {
	Wrong Wrong
	Text  string // the cell at fault
	Key   string // of the letter, where that was read
}

func (f Fault) Error() string { return string(f.Wrong) + ": " + f.Text } // package words says it to a person

// Wrong is a way in which a row is wrong.
type Wrong string

// The ways.
const (
	NoTime     Wrong = "no time"
	NoLetter   Wrong = "no letter"
	NotALetter Wrong = "no such letter"
	TooFew     Wrong = "too few cells"
	TooMany    Wrong = "too many cells"
	NotANumber Wrong = "no number"
	TimeBack   Wrong = "before the row above"
	NoMeasure  Wrong = "no measure to count in" // neither named nor weighed
	NotSeen    Wrong = "nothing that is looked for"
	NotWeighed Wrong = "nothing that is weighed"
	OutOfRange Wrong = "out of range"
)

// In is what rows lean on: the part that one measure of each material is.
type In struct{ Charcoal, Ore entry.Part }

// Read reads rows, a line each. Empty lines are let be; a fault stands at the place of
// its line, and the other rows are read all the same.
func Read(lines []string, in In) (rows []Row, faults []error) {
	last := -1
	rows, faults = make([]Row, len(lines)), make([]error, len(lines))
	for i, line := range lines {
		if strings.TrimSpace(line) == "" {
			continue
		}
		rows[i], faults[i] = One(line, last, in)
		if faults[i] == nil {
			last = rows[i].Minute
		}
	}
	return rows, faults
}

// halfDay is how far apart two rows may lie, in minutes: more is a row before the one above,
// round midnight too.
const halfDay = 12 * 60

// One reads a row. The minute of the row above is -1 for none.
func One(line string, above int, in In) (Row, error) {
	r := Row{Text: strings.TrimSpace(line)}
	cells := strings.FieldsFunc(r.Text, func(c rune) bool { return unicode.IsSpace(c) || c == ';' })
	if len(cells) == 0 {
		return r, Fault{Wrong: NoTime}
	}
	switch minute, ok := clock(cells[0]); {
	case ok:
		r.Minute = minute
	case cells[0] == `"` && above >= 0:
		r.Minute = above
	default:
		return r, Fault{Wrong: NoTime, Text: cells[0]}
	}
	if on := (r.Minute - above + 24*60) % (24 * 60); above >= 0 && on > halfDay {
		return r, Fault{Wrong: TimeBack, Text: cells[0]}
	}
	if len(cells) == 1 {
		return r, Fault{Wrong: NoLetter}
	}
	l, ok := Of(strings.ToLower(cells[1]))
	if !ok {
		return r, Fault{Wrong: NotALetter, Text: cells[1]}
	}
	ev, err := l.event(cells[2:], in)
	switch {
	case err != nil:
		f, _ := err.(Fault)
		f.Key = l.Key
		return r, f
	case entry.Check(ev) != nil:
		return r, Fault{Wrong: OutOfRange, Text: strings.Join(cells[2:], " "), Key: l.Key}
	}
	r.Event = ev
	return r, nil
}

// clock is a time of day in minutes.
func clock(cell string) (int, bool) {
	h, m, cut := strings.Cut(strings.Replace(cell, ".", ":", 1), ":")
	if !cut && (len(cell) == 3 || len(cell) == 4) {
		h, m = cell[:len(cell)-2], cell[len(cell)-2:]
	}
	hour, err1 := strconv.ParseUint(h, 10, 8)
	minute, err2 := strconv.ParseUint(m, 10, 8)
	if err1 != nil || err2 != nil || len(m) != 2 || hour > 23 || minute > 59 {
		return 0, false
	}
	return int(60*hour + minute), true
}

// event is what the cells behind a letter say.
func (l Letter) event(cells []string, in In) (entry.Event, error) {
	least, most := l.Takes.cells()
	switch {
	case len(cells) < least:
		return nil, Fault{Wrong: TooFew}
	case len(cells) > most:
		return nil, Fault{Wrong: TooMany, Text: strings.Join(cells[most:], " ")}
	}
	switch l.Takes {
	case TakesBoth:
		return charge(cells, in.Charcoal, in.Ore)
	case TakesOre:
		return charge(cells, in.Ore)
	case TakesCharcoal:
		return charge(cells, in.Charcoal)
	case TakesBlast:
		switch strings.ToLower(cells[0]) {
		case "on":
			return entry.Blast{State: entry.BlastOn}, nil
		case "off":
			return entry.Blast{State: entry.BlastOff}, nil
		}
		v, err := number(cells[0])
		return entry.Blast{Volume: entry.Some(entry.LitrePerMinute(v))}, err
	case TakesMass:
		if len(cells) == 0 {
			return entry.Tap{}, nil
		}
		v, err := number(weight(cells[0]))
		return entry.Tap{Mass: entry.Some(entry.Kilogram(v))}, err
	case TakesLook:
		return look(cells)
	case TakesDepth:
		v, err := number(cells[0])
		return entry.Dip{BelowRim: entry.Some(entry.Centimetre(v))}, err
	case TakesHeat:
		v, err := number(cells[0])
		return entry.Temperature{Degrees: entry.Celsius(v), Where: entry.WherePeep}, err
	case TakesWeight:
		return weighing(cells)
	case TakesWords:
		return entry.Note{Text: strings.Join(cells, " ")}, nil
	}
	return map[entry.Kind]entry.Event{
		entry.KindRod: entry.Rod{}, entry.KindPoke: entry.Poke{}, entry.KindLastOre: entry.LastOre{}, entry.KindBurnDown: entry.BurnDown{},
	}[l.Kind], nil
}

// cells is how many cells stand behind a letter.
func (t Takes) cells() (least, most int) {
	const any = 200
	switch t {
	case TakesNothing:
		return 0, 0
	case TakesBoth, TakesWeight:
		return 2, 2
	case TakesMass:
		return 0, 1
	case TakesLook, TakesWords:
		return 1, any
	}
	return 1, 1
}

// charge is so much of each material.
func charge(cells []string, of ...entry.Part) (entry.Event, error) {
	var c entry.Charge
	for i, p := range of {
		kg := weight(cells[i])
		v, err := number(kg)
		switch {
		case err != nil:
			return nil, err
		case kg != cells[i]:
			p.Measure, p.Mass = "", entry.Some(entry.Kilogram(v))
		case p.Measure == "":
			return nil, Fault{Wrong: NoMeasure, Text: cells[i]}
		default:
			p.Count = entry.Some(entry.Count(v))
		}
		c.Parts = append(c.Parts, p)
	}
	return c, nil
}

// weight is a cell without the kg behind it.
func weight(cell string) string {
	if n := len(cell) - 2; n > 0 && strings.EqualFold(cell[n:], "kg") {
		return cell[:n]
	}
	return cell
}

// number is a cell of digits with a point or a comma, a half or a quarter.
func number(cell string) (float64, error) {
	bad := Fault{Wrong: NotANumber, Text: cell}
	fractions := map[string]float64{"1/2": 0.5, "½": 0.5, "1/4": 0.25, "¼": 0.25, "3/4": 0.75, "¾": 0.75}
	if v, ok := fractions[cell]; ok {
		return v, nil
	}
	if cell == "" || strings.Trim(cell, "0123456789.,") != "" {
		return 0, bad
	}
	v, err := strconv.ParseFloat(strings.Replace(cell, ",", ".", 1), 64)
	if err != nil {
		return 0, bad
	}
	return v, nil
}

// look is what is seen at a place, in the peep unless one is named.
func look(cells []string) (entry.Event, error) {
	all := strings.ToLower(strings.Join(cells, " "))
	at, sees := entry.AtPeep, all
	for _, p := range entry.LookPlaces() {
		if rest, named := strings.CutPrefix(all, string(p)+" "); named {
			at, sees = p, rest
		}
	}
	if !slices.Contains(entry.LookWords(at), sees) {
		return nil, Fault{Wrong: NotSeen, Text: all}
	}
	return entry.Look{At: at, Sees: sees}, nil
}

// weighing is a thing and its weight.
func weighing(cells []string) (entry.Event, error) {
	what := entry.Weighed(strings.ToLower(cells[0]))
	if !slices.Contains([]entry.Weighed{entry.WeighBloom, entry.WeighSlag, entry.WeighFragments}, what) {
		return nil, Fault{Wrong: NotWeighed, Text: cells[0]}
	}
	v, err := number(weight(cells[1]))
	return entry.Weigh{What: what, Mass: entry.Kilogram(v)}, err
}
