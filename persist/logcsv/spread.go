package logcsv

import (
	"math"
	"slices"
	"strconv"
	"strings"

	"chargehand/model/entry"
)

// rowsOf gives the rows that an event takes in the table, or none where it has
// no place.
func rowsOf(ev entry.Event, v vessels) []row {
	if ev == nil {
		return nil
	}
	if rows, ok := writers[ev.Kind()]; ok {
		return rows(ev, v)
	}
	return nil
}

// writers make the rows of every kind that the table of kinds has a place for
// here (tested). Light is no row of its own: it is the time of the first.
var writers = map[entry.Kind]func(entry.Event, vessels) []row{
	entry.KindPhase: writes(func(ev entry.PhaseSet, _ vessels) []row {
		if ev.Phase != entry.Preheat {
			return nil
		}
		return []row{{event: evPreheat}}
	}),
	entry.KindFill:     writes(func(ev entry.Fill, v vessels) []row { return rowsOfParts(evFill, ev.Parts, v) }),
	entry.KindCharge:   writes(func(ev entry.Charge, v vessels) []row { return rowsOfParts(evCharge, ev.Parts, v) }),
	entry.KindTap:      writes(func(entry.Tap, vessels) []row { return []row{{event: evTap}} }),
	entry.KindBurnDown: writes(func(entry.BurnDown, vessels) []row { return []row{{event: evBurnDown}} }),
	entry.KindExtract:  writes(func(entry.Extract, vessels) []row { return []row{{event: evExtract}} }),
	entry.KindBlast: writes(func(ev entry.Blast, _ vessels) []row {
		volume := ev.Volume
		if ev.Off() {
			volume = entry.Some(entry.LitrePerMinute(0))
		}
		if r := single(colAir, cell(colAir, volume)); r != nil {
			return r
		}
		return []row{{event: evAir}}
	}),
	entry.KindTemperature: writes(func(ev entry.Temperature, _ vessels) []row {
		return single(colTemp, cell(colTemp, entry.Some(ev.Degrees)))
	}),
	entry.KindDip:  writes(func(ev entry.Dip, _ vessels) []row { return single(colHeight, cell(colHeight, ev.AboveTuyere)) }),
	entry.KindNote: writes(func(ev entry.Note, _ vessels) []row { return noted(ev.Text) }),
	entry.KindWall: writes(func(ev entry.WallSeen, _ vessels) []row {
		return noted(said("wall", string(ev.What), ev.Where, ev.With))
	}),
	entry.KindWeather: writes(func(ev entry.Weather, _ vessels) []row {
		return noted(said("weather", under("rain", ev.Rain), under("wind", ev.Wind), degrees(ev.Air)))
	}),
}

// said are the words of an event, those that it has, as a note: nobody reads them back.
func said(of string, words ...string) string {
	words = slices.DeleteFunc(words, func(w string) bool { return w == "" })
	return of + ": " + strings.Join(words, ", ")
}

// under is a word with what it is of, "" for none.
func under(of, word string) string {
	if word == "" {
		return ""
	}
	return of + " " + word
}

// degrees is a temperature, "" where it is not known.
func degrees(c entry.Maybe[entry.Celsius]) string {
	if !c.Known {
		return ""
	}
	return strconv.FormatFloat(float64(c.Value), 'f', -1, 64) + " °C"
}

// noted is a row of a note, or none where it is blank, as one is of which no program shows
// anything.
func noted(text string) []row {
	if text = plainText(text); strings.TrimSpace(Harmless(text)) == "" {
		return nil
	}
	return []row{{note: text}}
}

// writes makes a writer of one for the kind's own struct.
func writes[E entry.Event](rows func(E, vessels) []row) func(entry.Event, vessels) []row {
	return func(ev entry.Event, v vessels) []row {
		e, ok := ev.(E)
		if !ok {
			return nil
		}
		return rows(e, v)
	}
}

// single is a row of one cell, or none where it is blank.
func single(c column, n number) []row {
	if !n.Known {
		return nil
	}
	var r row
	r.cells[c] = n
	return []row{r}
}

// rowsOfParts gives the rows of a fill or charge: one, unless a material stands
// in it both weighed and counted, or known and unknown, which one cell cannot
// say.
func rowsOfParts(event string, ps entry.Parts, v vessels) []row {
	if len(ps) == 0 {
		return []row{{event: event}}
	}
	charcoal := amounts(ps, entry.Charcoal, v.charcoal, colCharcoal, colMeasures)
	ore := amounts(ps, entry.Ore, v.ore, colOre, colScoops)
	if len(charcoal)+len(ore) == 0 {
		return nil
	}
	rows := make([]row, max(len(charcoal), len(ore)))
	for i := range rows {
		rows[i].event = event
		put := func(as []amount, mass, count column, absent amount) {
			if i < len(as) {
				absent = as[i]
			}
			rows[i].cells[mass], rows[i].cells[count] = absent.mass, absent.count
		}
		nought := amount{mass: entry.Some(0.0)}
		put(charcoal, colCharcoal, colMeasures, nought)
		if event == evFill {
			nought = amount{} // a fill is of charcoal; a blank says no more than that
		}
		put(ore, colOre, colScoops, nought)
	}
	return rows
}

// amount is how much of one material a row holds.
type amount struct{ mass, count number }

func (a amount) none() bool {
	return a.mass.Known && a.mass.Value == 0 || !a.mass.Known && a.count.Known && a.count.Value == 0
}

// alike tells whether two amounts are known in the same way, so that their sum
// says the same as the two.
func (a amount) alike(b amount) bool {
	return a.mass.Known == b.mass.Known && a.count.Known == b.count.Known
}

// amounts adds up the parts of one material as far as they are alike. A count
// in another measure than the table's is left out. A part that says "none"
// stands only where there is no other.
func amounts(ps entry.Parts, what entry.What, measure string, massCol, countCol column) []amount {
	var as []amount
	var nought []amount
	for _, p := range ps {
		if p.What != what {
			continue
		}
		a := amount{mass: cell(massCol, p.Mass)}
		if p.Measure == measure || p.Measure == "" {
			a.count = cell(countCol, p.Count)
		}
		if a.none() {
			nought = []amount{a}
			continue
		}
		as = addTo(as, a, massCol, countCol)
	}
	if len(as) == 0 {
		return nought
	}
	return as
}

func addTo(as []amount, a amount, massCol, countCol column) []amount {
	for i, b := range as {
		sum := amount{mass: plus(a.mass, b.mass), count: plus(a.count, b.count)}
		if a.alike(b) && massCol.takes(sum.mass.Value) && countCol.takes(sum.count.Value) {
			as[i] = sum
			return as
		}
	}
	return append(as, a)
}

// plus adds two numbers and rounds off what binary fractions leave behind, so
// that 0.2 and 0.4 kg are 0.6 kg on paper.
func plus(a, b number) number {
	if !a.Known || !b.Known {
		return number{}
	}
	const perUnit = 1e9
	return entry.Some(math.Round((a.Value+b.Value)*perUnit) / perUnit)
}
