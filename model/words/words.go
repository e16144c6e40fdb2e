// Package words holds every word that the program says to a person.
//
// Rules: say what happened, what it means, what to do, in that order and in as
// few words as that takes. Use the trade's words and plain English; no word a
// helper at the furnace would have to ask about. Every number has its unit. A
// sentence of the screen has no full stop; one on the command line is one
// line, in lower case. Chemistry stands one key deeper. Nothing is said by
// colour alone, so each state has its word here.
package words

import (
	"strconv"
	"strings"
	"time"

	"chargehand/model/entry"
)

// --- numbers and parts -------------------------------------------------------

// Number is a number in as many decimals as it needs, at most so many.
func Number(v float64, decimals int) string {
	s := strconv.FormatFloat(v, 'f', decimals, 64)
	if strings.Contains(s, ".") {
		s = strings.TrimRight(strings.TrimRight(s, "0"), ".")
	}
	if s == "-0" {
		return "0"
	}
	return s
}

// Kg is a mass as weighed: to 10 g below 10 kg, to 100 g above.
func Kg(kg entry.Kilogram) string {
	if kg >= 10 {
		return Number(float64(kg), 1) + " kg"
	}
	return Number(float64(kg), 2) + " kg"
}

// Counted is a number of measures: "1 bucket", "half a scoop", "4 scoops".
func Counted(n entry.Count, measure string) string {
	switch n {
	case 0:
		return "no " + measure
	case 0.5:
		return "half a " + measure
	case 1:
		return "1 " + measure
	}
	return Number(float64(n), 2) + " " + plural(measure)
}

func plural(s string) string {
	for _, end := range []string{"s", "x", "ch", "sh"} {
		if strings.HasSuffix(s, end) {
			return s + "es"
		}
	}
	return s + "s"
}

// Material is what a part is made of.
func Material(w entry.What) string {
	switch w {
	case entry.SeedSlag:
		return "seed slag"
	case entry.ReturnedSlag:
		return "returned slag"
	}
	return string(w)
}

// OnePart is one part of a charge: "4 scoops of ore", "1.9 kg charcoal".
func OnePart(p entry.Part) string {
	what := Material(p.What)
	if p.Lot != "" {
		what += " (" + p.Lot + ")"
	}
	switch {
	case p.None():
		return "no " + what
	case p.Count.Known && p.Measure != "" && p.Mass.Known:
		return Counted(p.Count.Value, p.Measure) + " of " + what + ", " + Kg(p.Mass.Value)
	case p.Count.Known && p.Measure != "":
		return Counted(p.Count.Value, p.Measure) + " of " + what
	case p.Mass.Known:
		return Kg(p.Mass.Value) + " " + what
	case p.Count.Known:
		return Number(float64(p.Count.Value), 2) + " measures of " + what
	}
	return what + ", not weighed"
}

// AllParts is the content of a charge or fill.
func AllParts(ps entry.Parts) string {
	if len(ps) == 0 {
		return "content not recorded"
	}
	said := make([]string, len(ps))
	for i, p := range ps {
		said[i] = OnePart(p)
	}
	return strings.Join(said, ", ")
}

// --- events ------------------------------------------------------------------

// Event is what an entry says happened, in one line.
func Event(ev entry.Event) string {
	switch ev := ev.(type) {
	case nil:
		return "an entry without an event"
	case entry.Light:
		return "fire lit in " + orElse(ev.Furnace.Name, "a furnace without a name")
	case entry.PhaseSet:
		return Phase(ev.Phase) + " begins"
	case entry.Recipe:
		return "next charge: " + AllParts(ev.Next)
	case entry.Fill:
		return "fill: " + AllParts(ev.Parts)
	case entry.Charge:
		return "charge: " + AllParts(ev.Parts)
	case entry.Level:
		return "level: " + string(ev.Remark)
	case entry.Dip:
		return dip(ev)
	case entry.Poke:
		return "poked the burden"
	case entry.Blast:
		return blast(ev)
	case entry.Rod:
		return "rodded the tuyere"
	case entry.Tuyere:
		return tuyere(ev)
	case entry.Tap:
		return joined("tapped slag", mass(ev.Mass))
	case entry.Arch:
		if ev.Open {
			return "arch opened"
		}
		return "arch closed"
	case entry.Look:
		return string(ev.At) + ": " + ev.Sees
	case entry.Temperature:
		return joined(Number(float64(ev.Degrees), 0)+" °C", ev.Where)
	case entry.Weigh:
		return weigh(ev)
	case entry.Sample:
		return joined("sample of "+orElse(ev.Of, "slag"), ev.Note)
	case entry.OreHeld:
		if ev.Again {
			return "ore goes in again"
		}
		return "ore held back"
	case entry.LastOre:
		return "last ore is in"
	case entry.BurnDown:
		return "burn-down begins"
	case entry.Extract:
		if ev.None {
			return "opened: no bloom"
		}
		return joined("bloom taken out", ev.From)
	case entry.Pause:
		return joined("pause", ev.Why)
	case entry.Resume:
		return "work goes on"
	case entry.HandOver:
		return "handed over to " + ev.To
	case entry.ForgeHeat:
		return joined("forge heat "+strconv.Itoa(ev.Number), ev.Step)
	case entry.Note:
		return "note: " + ev.Text
	default:
		return journal(ev)
	}
}

// journal is the events of the journal itself and of the house.
func journal(ev entry.Event) string {
	switch ev := ev.(type) {
	case entry.Strike:
		return "crossed out an entry"
	case entry.Amend:
		if ev.Event == nil {
			return "changed the time of an entry"
		}
		return "changed an entry to " + Event(ev.Event)
	case entry.Keys:
		return "keys: " + strconv.Itoa(len(ev.Pressed))
	case entry.Acknowledge:
		return "seen: " + ev.Rule
	case entry.CautionShown:
		return "caution shown: " + ev.Caution
	case entry.Setting:
		return "setting " + ev.Name + ": " + ev.Value
	case entry.ClockJump:
		return "the clock was set " + By(time.Duration(ev.ByMs)*time.Millisecond)
	case entry.Testimony:
		return joined("warning "+ev.State+": "+ev.Rule, ev.Text)
	case entry.FurnaceBuilt:
		return "furnace " + ev.Furnace.Name
	case entry.LotStored:
		return "lot " + ev.Lot.Name
	case entry.MeasureNamed:
		return "measure " + ev.Measure.Name
	case entry.Plan:
		return "plan " + ev.Name
	}
	return string(ev.Kind()) + ", written by a newer version"
}

func dip(d entry.Dip) string {
	if d.BelowRim.Known {
		return "dip: " + Number(float64(d.BelowRim.Value), 1) + " cm below the rim"
	}
	return "dip: " + Number(float64(d.AboveTuyere.Value), 1) + " cm above the tuyere"
}

func blast(b entry.Blast) string {
	said := "blast"
	add := func(known bool, s string) {
		if known {
			said = joined(said, s)
		}
	}
	add(b.State != "", string(b.State))
	add(b.Volume.Known, Number(float64(b.Volume.Value), 0)+" l/min")
	add(b.Gate != "", "gate "+b.Gate)
	add(b.Strokes.Known, Number(float64(b.Strokes.Value), 0)+" strokes a minute")
	add(b.Tuyeres.Known, Number(float64(b.Tuyeres.Value), 0)+" tuyeres open")
	add(b.Pressure.Known, Number(float64(b.Pressure.Value), 0)+" Pa")
	add(b.Meter != "", "by "+b.Meter)
	return said
}

func tuyere(t entry.Tuyere) string {
	said := "tuyere"
	add := func(known bool, s string) {
		if known {
			said = joined(said, s)
		}
	}
	add(t.Angle.Known, Number(float64(t.Angle.Value), 1)+"° downwards")
	add(t.Proud.Known, "tip "+Number(float64(t.Proud.Value), 1)+" cm into the shaft")
	add(t.Bore.Known, "bore "+Number(float64(t.Bore.Value), 1)+" mm")
	add(t.Swapped != "", "swapped for "+t.Swapped)
	return said
}

func weigh(w entry.Weigh) string {
	what := string(w.What)
	if w.What == entry.WeighMeasure || w.What == entry.WeighLot {
		what = orElse(w.Name, what)
	}
	said := "weighed: " + what + " " + Kg(w.Mass)
	if w.Why != "" {
		said += ", " + string(w.Why)
	}
	if w.What == entry.WeighMeasure {
		if w.FromNow {
			return said + ", from then on"
		}
		return said + ", for the whole smelt"
	}
	return said
}

// Phase is a stage of the smelt, as a person says it.
func Phase(p entry.Phase) string {
	if p == "" {
		return "no phase"
	}
	return string(p)
}

func mass(m entry.Maybe[entry.Kilogram]) string {
	if !m.Known {
		return ""
	}
	return Kg(m.Value)
}

// joined puts a detail after a word, when there is one.
func joined(s, detail string) string {
	if detail == "" {
		return s
	}
	return s + ", " + detail
}

func orElse(s, other string) string {
	if s == "" {
		return other
	}
	return s
}

// By is by how much and which way a clock was set: "5 min forward".
func By(d time.Duration) string {
	way := " forward"
	if d < 0 {
		way = " back"
	}
	if d = d.Abs(); d < 2*time.Minute {
		return strconv.Itoa(int(d.Round(time.Second).Seconds())) + " s" + way
	}
	return strconv.Itoa(int(d.Round(time.Minute).Minutes())) + " min" + way
}
