package columns

import (
	"maps"
	"slices"
	"strings"
	"unicode"

	"chargehand/model/entry"
)

// Why is what a guess rests on.
type Why int

// What it may rest on.
const (
	NotKnown  Why = iota // nothing was guessed
	ByName               // the name of the column, with its unit if it has one
	ByFigures            // the name says what it is, and the figures in which unit; or the figures say both
	AsKept               // columns kept from an earlier log
	Twice                // its name says what another column is already
	OtherUnit            // its name says a unit that is not read
	RunsUp               // its name says that it is a running sum
)

// Guess is what a column is likely to be; nothing where its meaning is "".
type Guess struct {
	Mapped entry.Mapped
	Why    Why
}

// Guesses are what the columns of a table are likely to be, by their names and by what
// stands in the first rows under them. decimalComma says that a comma in a number is a
// decimal one. It is a guess, to be shown to somebody before anything is kept.
func Guesses(heads []string, rows [][]string, decimalComma bool) []Guess {
	gs := make([]Guess, len(heads))
	taken := map[Meaning]bool{}
	for i, head := range heads {
		gs[i] = guessOf(head, under(rows, i), decimalComma)
		m := Meaning(gs[i].Mapped.Ours)
		if m != "" && m != Note && taken[m] {
			gs[i] = Guess{Why: Twice}
			continue
		}
		taken[m] = true
	}
	if taken[Clock] {
		return gs
	}
	for i := range heads { // a time is a time whatever its name
		if gs[i].Mapped.Ours == "" || gs[i].Mapped.Ours == string(Note) {
			if unit, ok := clockOf(heads[i], under(rows, i), decimalComma, false); ok {
				gs[i] = Guess{entry.Mapped{Ours: string(Clock), Unit: unit}, ByFigures}
				return gs
			}
		}
	}
	return gs
}

// Mapping is what was guessed as a mapping.
func Mapping(heads []string, gs []Guess) map[string]entry.Mapped {
	m := map[string]entry.Mapped{}
	for i, g := range gs {
		if g.Mapped.Ours != "" {
			m[heads[i]] = g.Mapped
		}
	}
	return m
}

// Kept is the mapping among those kept whose columns all stand in a table, the one with
// most of them first; none where no mapping fits.
func Kept(heads []string, kept map[string]entry.Mapping) (entry.Mapping, bool) {
	var best entry.Mapping
	found := false
	for _, name := range slices.Sorted(maps.Keys(kept)) {
		k := kept[name]
		fits := Check(k.Columns) == nil
		for theirs := range k.Columns {
			fits = fits && slices.ContainsFunc(heads, func(h string) bool { return strings.EqualFold(h, theirs) })
		}
		if fits && len(k.Columns) > len(best.Columns) {
			best, found = k, true
		}
	}
	return best, found
}

func under(rows [][]string, i int) []string {
	var cells []string
	for _, r := range rows {
		if i < len(r) && strings.TrimSpace(r[i]) != "" {
			cells = append(cells, strings.TrimSpace(r[i]))
		}
	}
	return cells
}

// meant are words in a column's name and what they make of it, the more telling first.
var meant = []struct {
	words []string
	is    Meaning
}{
	{[]string{"note", "notes", "remark", "remarks", "comment", "comments", "observation", "observations"}, Note},
	{[]string{"scoop", "scoops"}, Scoops},
	{[]string{"bucket", "buckets", "measure", "measures", "basket", "baskets"}, Measures},
	{[]string{"ore", "ores"}, Ore},
	{[]string{"charcoal", "coal", "fuel"}, Charcoal},
	{[]string{"temp", "temperature", "pyrometer", "thermocouple"}, Temp},
	{[]string{"air", "blast", "blower", "airflow", "flow", "cfm", "lpm"}, Air},
	{[]string{"height", "stack", "burden", "level"}, Height},
	{[]string{"time", "clock", "elapsed", "minute", "minutes", "min", "hour", "hours"}, Clock},
	{[]string{"date", "day"}, Date},
	{[]string{"event", "what", "action", "activity", "step", "did", "done"}, Event},
}

// unitWords are words for units, in a name or behind a number.
var unitWords = map[string]string{
	"kg": "kg", "kgs": "kg", "kilo": "kg", "kilos": "kg", "kilograms": "kg", "lb": "lb", "lbs": "lb", "pound": "lb", "pounds": "lb", "#": "lb",
	"g": "g", "grams": "g", "gram": "g", "oz": "oz", "ounces": "oz",
	"cfm": "cfm", "l/min": "l/min", "lpm": "l/min", "m3/h": "m3/h", "m³/h": "m3/h", "m3/min": "m3/min", "m³/min": "m3/min", "l/s": "l/s",
	"c": "C", "°c": "C", "degc": "C", "celsius": "C", "centigrade": "C", "f": "F", "°f": "F", "degf": "F", "fahrenheit": "F", "k": "K", "kelvin": "K",
	"cm": "cm", "in": "in", "inch": "in", "inches": "in", "\"": "in", "mm": "mm", "m": "m", "ft": "ft", "feet": "ft",
	"min": "min", "mins": "min", "minute": "min", "minutes": "min", "h": "h", "hr": "h", "hrs": "h", "hour": "h", "hours": "h",
}

// foreign are units that can be read of no column.
var foreign = []string{"psi", "pa", "kpa", "mbar", "bar", "inh2o", "mmh2o", "v", "volt", "volts", "hz", "rpm", "stone", "%", "l", "litre", "litres", "liter", "liters", "gal", "gallons", "mv"}

// runs are words in the name of a column that sums up what stands in another.
var runs = []string{"total", "cumulative", "sum", "running", "cum"}

// tokens are the words of a name, units with a stroke in them whole.
func tokens(head string) []string {
	head = strings.ToLower(strings.NewReplacer("m^3", "m3", "cu ft/min", "cfm", "litres/min", "l/min", "liters/min", "l/min", "l per min", "l/min").Replace(head))
	return strings.FieldsFunc(head, func(c rune) bool {
		return !unicode.IsLetter(c) && !unicode.IsDigit(c) && !strings.ContainsRune("/°³#\"%", c)
	})
}

func guessOf(head string, cells []string, decimalComma bool) Guess {
	words := tokens(head)
	has := func(all []string) bool {
		return slices.ContainsFunc(words, func(w string) bool { return slices.Contains(all, w) })
	}
	if c, ok := Of(strings.TrimSpace(head)); ok && !strings.EqualFold(head, string(c.Name)) {
		return Guess{entry.Mapped{Ours: string(c.Name), Unit: c.Units[0].Name}, ByName} // as our table names it, with its unit
	}
	var is Meaning
	for _, m := range meant {
		if has(m.words) {
			is = m.is
			break
		}
	}
	air, temp := has([]string{"air"}), has([]string{"temp", "temperature"})
	switch {
	case is == "":
		return Guess{}
	case has(runs):
		return Guess{Why: RunsUp}
	case air && temp || has([]string{"weather", "outside", "ambient"}):
		return Guess{} // of the weather, not of the furnace
	case is == Note:
		return Guess{entry.Mapped{Ours: string(Note)}, ByName}
	case is == Clock || is == Date && slices.Contains(words, "time"):
		if unit, ok := clockOf(head, cells, decimalComma, true); ok {
			return Guess{entry.Mapped{Ours: string(Clock), Unit: unit}, ByName}
		}
		return Guess{}
	case is == Date:
		if unit, ok := dateOf(cells); ok {
			return Guess{entry.Mapped{Ours: string(Date), Unit: unit}, ByName}
		}
		return Guess{}
	case is == Event:
		return Guess{entry.Mapped{Ours: string(Event)}, ByName}
	}
	return numbersOf(is, words, cells, decimalComma)
}

// numbersOf guesses the unit of a column of numbers; one that holds words is a note.
func numbersOf(is Meaning, words, cells []string, decimalComma bool) Guess {
	c, _ := Of(string(is))
	var values []float64
	for _, cell := range cells {
		if v, ok := Number(cell, decimalComma); ok && v > 0 {
			values = append(values, v)
		} else if !ok && len(cells) > 0 {
			words := 0
			for _, one := range cells {
				if _, ok := Number(one, decimalComma); !ok {
					words++
				}
			}
			if 5*words > len(cells) {
				return Guess{entry.Mapped{Ours: string(Note)}, ByFigures}
			}
		}
	}
	if slices.ContainsFunc(words, func(w string) bool { return slices.Contains(foreign, w) }) {
		return Guess{Why: OtherUnit}
	}
	for _, w := range words {
		if u, ok := c.Unit(unitWords[w]); ok && unitWords[w] != "" {
			return Guess{entry.Mapped{Ours: string(is), Unit: u.Name}, ByName}
		}
	}
	g := Guess{entry.Mapped{Ours: string(is), Unit: c.Units[0].Name}, ByName}
	if len(values) == 0 || len(c.Units) == 1 {
		return g
	}
	slices.Sort(values)
	middle := values[len(values)/2]
	for _, u := range c.Units { // ours first: where it would do nothing else is thought of
		if c.Usual(u.Ours(middle)) {
			if g.Mapped.Unit = u.Name; u != c.Units[0] {
				g.Why = ByFigures
			}
			break
		}
	}
	return g
}
