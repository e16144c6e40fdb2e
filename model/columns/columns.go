// Package columns says what the columns of other people's logs can mean: which columns
// ours are, in which units each is read, what the names and the figures of a table make
// likely, and what was read of one.
package columns

import (
	"encoding/csv"
	"errors"
	"fmt"
	"maps"
	"slices"
	"strings"

	"chargehand/model/entry"
)

// Meaning is what a column of theirs is with us, as a mapping writes it.
type Meaning string

// The meanings.
const (
	Clock    Meaning = "clock"
	Date     Meaning = "date"
	Event    Meaning = "event"
	Charcoal Meaning = "charcoal"
	Measures Meaning = "measures"
	Ore      Meaning = "ore"
	Scoops   Meaning = "scoops"
	Air      Meaning = "air"
	Temp     Meaning = "temp"
	Height   Meaning = "height"
	Note     Meaning = "note"
)

// all are the columns that others can be mapped to. The first unit of each is ours.
var all = []Column{
	{Name: Clock, To: "clock", Units: []Unit{{"", 1, 0}, {"12h", 1, 0}, {"min", 1, 0}, {"h", 60, 0}, {"day", 1440, 0}}},
	{Name: Date, To: "date", Units: []Unit{{"", 1, 0}, {"d/m/y", 1, 0}, {"m/d/y", 1, 0}}},
	{Name: Event, To: "event", Units: []Unit{{"", 1, 0}}},
	{Name: Charcoal, To: "charcoal_kg", Units: mass, Least: 0.2, Most: 15},
	{Name: Measures, To: "measures", Units: []Unit{{"", 1, 0}}, Least: 0.2, Most: 12},
	{Name: Ore, To: "ore_kg", Units: mass, Least: 0.1, Most: 8},
	{Name: Scoops, To: "scoops", Units: []Unit{{"", 1, 0}}, Least: 0.2, Most: 40},
	{Name: Air, To: "air_l_min", Units: []Unit{{"l/min", 1, 0}, {"cfm", cubicFoot, 0}, {"m3/h", 1000.0 / 60, 0}, {"m3/min", 1000, 0}, {"l/s", 60, 0}}, Least: 100, Most: 3000},
	{Name: Temp, To: "temp_c", Units: []Unit{{"C", 1, 0}, {"F", 5.0 / 9, -32}, {"K", 1, -273.15}}, Least: 100, Most: 1600},
	{Name: Height, To: "height_cm", Units: []Unit{{"cm", 1, 0}, {"in", inch, 0}, {"m", 100, 0}, {"mm", 0.1, 0}, {"ft", 12 * inch, 0}}, Least: 5, Most: 150},
	{Name: Note, To: "note", Units: []Unit{{"", 1, 0}}},
}

// The units of others in ours, exact since the international yard and pound of 1959: a
// pound and an ounce in kg, an inch in cm, a cubic foot in l.
const (
	pound     = 0.45359237
	ounce     = pound / 16
	inch      = 2.54
	cubicFoot = 28.316846592
)

var mass = []Unit{{"kg", 1, 0}, {"lb", pound, 0}, {"g", 0.001, 0}, {"oz", ounce, 0}}

// Column is one of ours. Least and Most are between which the middle of its numbers lies in
// the published logs, and around: beyond, the unit is doubted and nothing else (assumed).
type Column struct {
	Name        Meaning
	To          string // its name in our table
	Units       []Unit
	Least, Most float64
}

// Unit turns a number into ours: (v + Plus) * Times.
type Unit struct {
	Name        string
	Times, Plus float64
}

// Ours is a number of this unit in our unit.
func (u Unit) Ours(v float64) float64 { return (v + u.Plus) * u.Times }

// Theirs is a number of ours in this unit.
func (u Unit) Theirs(v float64) float64 { return v/u.Times - u.Plus }

// Numeric tells whether it holds numbers.
func (c Column) Numeric() bool { return c.Most > 0 }

// Usual tells whether a number of ours is usual for a small furnace.
func (c Column) Usual(v float64) bool { return v >= c.Least && v <= c.Most }

// All are the columns, in the order in which they are offered.
func All() []Column { return slices.Clone(all) }

// Of finds one of ours by the name of a mapping or that of our table.
func Of(name string) (Column, bool) {
	i := slices.IndexFunc(all, func(c Column) bool { return strings.EqualFold(string(c.Name), name) || strings.EqualFold(c.To, name) })
	if i < 0 {
		return Column{}, false
	}
	return all[i], true
}

// Unit finds one of its units, the first for no name.
func (c Column) Unit(name string) (Unit, bool) {
	if name == "" {
		return c.Units[0], true
	}
	i := slices.IndexFunc(c.Units, func(u Unit) bool { return strings.EqualFold(u.Name, name) })
	if i < 0 {
		return Unit{}, false
	}
	return c.Units[i], true
}

// Names are the columns that others can be mapped to, with their units.
func Names() string {
	var said []string
	for _, c := range all {
		one := string(c.Name)
		for _, u := range c.Units[1:] {
			if one == string(c.Name) {
				one += ":" + strings.TrimPrefix(c.Units[0].Name+"|", "|")
			}
			one += u.Name + "|"
		}
		said = append(said, strings.TrimSuffix(one, "|"))
	}
	return strings.Join(said, ", ")
}

// Parse reads a mapping as it is written on a command line: theirs=ours:unit, one after
// the other between commas; a name with a comma stands in double quotes, as does all of
// it: "Coal, lb=charcoal:lb".
func Parse(spec string) (map[string]entry.Mapped, error) {
	r := csv.NewReader(strings.NewReader(spec))
	r.TrimLeadingSpace, r.FieldsPerRecord, r.LazyQuotes = true, -1, true
	cells, err := r.Read()
	if err != nil {
		return nil, errors.New("--columns has nothing in it: as Time=clock,Coal=charcoal:lb,Ore=ore:lb")
	}
	if _, err := r.Read(); err == nil {
		return nil, errors.New("--columns runs over a line's end: put all of it on one line")
	}
	m := map[string]entry.Mapped{}
	taken := map[string]string{}
	for _, cell := range cells {
		theirs, mapped, err := one(cell)
		if err != nil {
			return nil, err
		}
		if _, twice := m[theirs]; twice {
			return nil, fmt.Errorf("--columns names %q twice: keep one", theirs)
		}
		if other, twice := taken[mapped.Ours]; twice && mapped.Ours != string(Note) {
			return nil, fmt.Errorf("--columns takes both %q and %q for %s: keep one", other, theirs, mapped.Ours)
		}
		m[theirs], taken[mapped.Ours] = mapped, theirs
	}
	return m, Check(m)
}

func one(cell string) (string, entry.Mapped, error) {
	i := strings.LastIndex(cell, "=")
	if i < 0 {
		return "", entry.Mapped{}, fmt.Errorf("--columns %q is not theirs=ours: as Coal=charcoal:lb", cell)
	}
	theirs := strings.TrimSpace(cell[:i])
	name, unit, _ := strings.Cut(strings.TrimSpace(cell[i+1:]), ":")
	if theirs == "" {
		return "", entry.Mapped{}, fmt.Errorf("--columns %q names no column of theirs: as Coal=charcoal:lb", cell)
	}
	c, ok := Of(strings.TrimSpace(name))
	if !ok {
		return "", entry.Mapped{}, fmt.Errorf("--columns: no column of ours is called %q: use %s", name, Names())
	}
	u, ok := c.Unit(strings.TrimSpace(unit))
	if !ok {
		return "", entry.Mapped{}, fmt.Errorf("--columns: %s is not read in %q: use %s", c.Name, unit, Names())
	}
	return theirs, entry.Mapped{Ours: string(c.Name), Unit: u.Name}, nil
}

// Written is a mapping as a command line takes it, in the order of the heads.
func Written(heads []string, m map[string]entry.Mapped) string {
	var parts []string
	for _, h := range heads {
		if to, ok := m[h]; ok {
			part := h + "=" + to.Ours
			if to.Unit != "" {
				part += ":" + to.Unit
			}
			if strings.ContainsAny(part, ",\"") {
				part = `"` + strings.ReplaceAll(part, `"`, `""`) + `"`
			}
			parts = append(parts, part)
		}
	}
	return strings.Join(parts, ",")
}

// What a mapping may lack.
var (
	ErrNoTime  = errors.New("no column is the time: as Time=clock, or Minute=clock:min for minutes since the start")
	ErrNothing = errors.New("a time is named and nothing else: as Time=clock,Coal=charcoal:lb,Ore=ore:lb")
)

// Check tells what is wrong with a mapping or what it lacks: a time at the least
// ([ErrNoTime]), and something that was done ([ErrNothing]).
func Check(m map[string]entry.Mapped) error {
	has := map[Meaning]bool{}
	for _, theirs := range slices.Sorted(maps.Keys(m)) {
		c, ok := Of(m[theirs].Ours)
		if !ok {
			return fmt.Errorf("the column %q is mapped to %q, which is none of ours: use %s", theirs, m[theirs].Ours, Names())
		}
		if _, ok := c.Unit(m[theirs].Unit); !ok {
			return fmt.Errorf("the column %q is in %q, which %s is not read in: use %s", theirs, m[theirs].Unit, c.Name, Names())
		}
		has[c.Name] = true
	}
	switch {
	case !has[Clock]:
		return ErrNoTime
	case len(has) < 2:
		return ErrNothing
	}
	return nil
}
