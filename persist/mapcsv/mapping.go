// Package mapcsv reads other people's logs: tables whose columns have other names and
// other units than ours. A mapping names the columns; the table becomes one of package
// logcsv, line by line, which alone is read on.
package mapcsv

import (
	"encoding/csv"
	"errors"
	"fmt"
	"maps"
	"slices"
	"strings"

	"chargehand/model/entry"
)

// ours are the columns that others can be mapped to: what a column is called in a mapping,
// its name in our table, and the factor and offset to our unit of each unit, the first of
// which is ours.
var ours = []column{
	{name: "clock", to: "clock", units: []unit{{"", 1, 0}, {"min", 1, 0}, {"h", 60, 0}}},
	{name: "date", to: "date", units: []unit{{"", 1, 0}}},
	{name: "event", to: "event", units: []unit{{"", 1, 0}}},
	{name: "charcoal", to: "charcoal_kg", units: mass, least: 0.2, most: 15},
	{name: "measures", to: "measures", units: []unit{{"", 1, 0}}, least: 0.2, most: 12},
	{name: "ore", to: "ore_kg", units: mass, least: 0.1, most: 8},
	{name: "scoops", to: "scoops", units: []unit{{"", 1, 0}}, least: 0.2, most: 40},
	{name: "air", to: "air_l_min", units: []unit{{"l/min", 1, 0}, {"cfm", 28.316846592, 0}, {"m3/h", 1000.0 / 60, 0}}, least: 100, most: 3000},
	{name: "temp", to: "temp_c", units: []unit{{"C", 1, 0}, {"F", 5.0 / 9, -32}}, least: 100, most: 1600},
	{name: "height", to: "height_cm", units: []unit{{"cm", 1, 0}, {"in", 2.54, 0}, {"m", 100, 0}}, least: 5, most: 150},
	{name: "note", to: "note", units: []unit{{"", 1, 0}}},
}

// mass is in kg, and a pound is 0.45359237 kg (international, of 1959).
var mass = []unit{{"kg", 1, 0}, {"lb", 0.45359237, 0}, {"g", 0.001, 0}}

// column is one of ours. least and most are between which the middle of its numbers lies in
// the published logs, and around: beyond, the unit is doubted and nothing else (assumed).
type column struct {
	name, to    string
	units       []unit
	least, most float64
}

// unit turns a number into ours: (v + plus) * times.
type unit struct {
	name        string
	times, plus float64
}

func (u unit) ours(v float64) float64 { return (v + u.plus) * u.times }

func (c column) numeric() bool { return c.most > 0 }

// column finds one of ours by the name of a mapping or that of our table.
func columnOf(name string) (column, bool) {
	i := slices.IndexFunc(ours, func(c column) bool { return strings.EqualFold(c.name, name) || strings.EqualFold(c.to, name) })
	if i < 0 {
		return column{}, false
	}
	return ours[i], true
}

func (c column) unit(name string) (unit, bool) {
	if name == "" {
		return c.units[0], true
	}
	i := slices.IndexFunc(c.units, func(u unit) bool { return strings.EqualFold(u.name, name) })
	if i < 0 {
		return unit{}, false
	}
	return c.units[i], true
}

// Names are the columns that others can be mapped to, with their units.
func Names() string {
	var all []string
	for _, c := range ours {
		said := c.name
		for _, u := range c.units[1:] {
			if said == c.name {
				said += ":" + strings.TrimPrefix(c.units[0].name+"|", "|")
			}
			said += u.name + "|"
		}
		all = append(all, strings.TrimSuffix(said, "|"))
	}
	return strings.Join(all, ", ")
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
		if other, twice := taken[mapped.Ours]; twice && mapped.Ours != "note" {
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
	c, ok := columnOf(strings.TrimSpace(name))
	if !ok {
		return "", entry.Mapped{}, fmt.Errorf("--columns: no column of ours is called %q: use %s", name, Names())
	}
	u, ok := c.unit(strings.TrimSpace(unit))
	if !ok {
		return "", entry.Mapped{}, fmt.Errorf("--columns: %s is not read in %q: use %s", c.name, unit, Names())
	}
	return theirs, entry.Mapped{Ours: c.name, Unit: u.name}, nil
}

// Check tells what a mapping lacks: a time at the least, and something that was done.
func Check(m map[string]entry.Mapped) error {
	has := map[string]bool{}
	for _, theirs := range slices.Sorted(maps.Keys(m)) {
		c, ok := columnOf(m[theirs].Ours)
		if !ok {
			return fmt.Errorf("the column %q is mapped to %q, which is none of ours: use %s", theirs, m[theirs].Ours, Names())
		}
		if _, ok := c.unit(m[theirs].Unit); !ok {
			return fmt.Errorf("the column %q is in %q, which %s is not read in: use %s", theirs, m[theirs].Unit, c.name, Names())
		}
		has[c.name] = true
	}
	switch {
	case !has["clock"]:
		return errors.New("--columns names no time: as Time=clock, or Minute=clock:min for minutes since the start")
	case len(has) < 2:
		return errors.New("--columns names a time and nothing else: as Time=clock,Coal=charcoal:lb,Ore=ore:lb")
	}
	return nil
}
