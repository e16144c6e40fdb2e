package words

import (
	"strconv"
	"time"

	"chargehand/model/entry"
)

// Event is what an entry says happened, in one line.
func (u Units) Event(ev entry.Event) string {
	switch ev := ev.(type) {
	case nil:
		return "an entry without an event"
	case entry.Light:
		return "fire lit in " + orElse(ev.Furnace.Name, "a furnace without a name")
	case entry.PhaseSet:
		return phaseSet(ev.Phase)
	case entry.Recipe:
		return "next charge: " + u.AllParts(ev.Next)
	case entry.Fill:
		return "fill: " + u.AllParts(ev.Parts)
	case entry.Charge:
		return "charge: " + u.AllParts(ev.Parts)
	case entry.Level:
		return "level: " + string(ev.Remark)
	case entry.Dip:
		return u.dip(ev)
	case entry.Poke:
		return "poked the burden"
	case entry.Blast:
		return u.blast(ev)
	case entry.Rod:
		return "rodded the tuyere"
	case entry.Tuyere:
		return u.tuyere(ev)
	case entry.Tap:
		return joined("tapped slag", u.mass(ev.Mass))
	case entry.Arch:
		if ev.Open {
			return "arch opened"
		}
		return "arch closed"
	case entry.Look:
		return string(ev.At) + ": " + ev.Sees
	case entry.Temperature:
		return joined(u.Value(float64(ev.Degrees), "°C", 0), ev.Where)
	case entry.Weigh:
		return u.weigh(ev)
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
		return u.journal(ev)
	}
}

// journal is the events of the journal itself and of the house.
func (u Units) journal(ev entry.Event) string {
	switch ev := ev.(type) {
	case entry.Strike:
		return "crossed out an entry"
	case entry.Amend:
		if ev.Event == nil {
			return "changed the time of an entry"
		}
		return "changed an entry to " + u.Event(ev.Event)
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

func (u Units) dip(d entry.Dip) string {
	if d.BelowRim.Known {
		return "dip: " + u.Value(float64(d.BelowRim.Value), "cm", 1) + " below the rim"
	}
	return "dip: " + AboveTuyere(u.Value(float64(d.AboveTuyere.Value), "cm", 1))
}

func (u Units) blast(b entry.Blast) string {
	said := "blast"
	add := func(known bool, s string) {
		if known {
			said = joined(said, s)
		}
	}
	add(b.State != "", string(b.State))
	add(b.Volume.Known, u.Value(float64(b.Volume.Value), "l/min", 0))
	add(b.Read.With != "", u.airReading(b.Read))
	add(b.Gate != "", Gate(b.Gate))
	add(b.Strokes.Known, Strokes(float64(b.Strokes.Value)))
	add(b.Stroke.Known, Number(float64(b.Stroke.Value), 1)+" l each")
	add(b.Tuyeres.Known, Tuyeres(float64(b.Tuyeres.Value)))
	add(b.Pressure.Known, u.Value(float64(b.Pressure.Value), "Pa", 0))
	add(b.Meter != "", "by "+b.Meter)
	return said
}

func (u Units) airReading(r entry.AirReading) string {
	said := string(r.With)
	if r.Pressure.Known {
		said += " " + u.Value(float64(r.Pressure.Value), "Pa", 1)
	}
	if r.Speed.Known {
		said += " " + Number(float64(r.Speed.Value), 1) + " m/s"
	}
	return said
}

func (u Units) tuyere(t entry.Tuyere) string {
	said := "tuyere"
	add := func(known bool, s string) {
		if known {
			said = joined(said, s)
		}
	}
	add(t.Angle.Known, Number(float64(t.Angle.Value), 1)+"° downwards")
	add(t.Proud.Known, "tip "+u.Value(float64(t.Proud.Value), "cm", 1)+" into the shaft")
	add(t.Bore.Known, "bore "+u.Value(float64(t.Bore.Value), "mm", 1))
	add(t.Swapped != "", "swapped for "+t.Swapped)
	return said
}

func (u Units) weigh(w entry.Weigh) string {
	what := string(w.What)
	if w.What == entry.WeighMeasure || w.What == entry.WeighLot {
		what = orElse(w.Name, what)
	}
	said := "weighed: " + what + " " + u.Kg(w.Mass)
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

func phaseSet(p entry.Phase) string {
	switch p {
	case entry.Prepared:
		return "furnace prepared"
	case entry.Extracted:
		return "bloom taken out"
	case entry.Closed:
		return "smelt closed"
	}
	return Phase(p) + " begins"
}

// Phase is a stage of the smelt, as a person says it.
func Phase(p entry.Phase) string {
	if p == "" {
		return "no phase"
	}
	return string(p)
}

// PhaseAfter is the phase of a smelt that is over, and how long it took to get
// there.
func PhaseAfter(p entry.Phase, took time.Duration) string { return Phase(p) + " after " + Lasted(took) }

func (u Units) mass(m entry.Maybe[entry.Kilogram]) string {
	if !m.Known {
		return ""
	}
	return u.Kg(m.Value)
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
