package words

import (
	"maps"
	"strconv"
	"time"

	"chargehand/model/account"
	"chargehand/model/entry"
)

// Event is what an entry says happened, in one line.
func (u Units) Event(ev entry.Event) string {
	if ev == nil {
		return "an entry without an event"
	}
	if say, ok := eventWords[ev.Kind()]; ok && entry.TraitsOf(ev).Known() {
		return say(u, ev)
	}
	return string(ev.Kind()) + ", written by a newer version"
}

// sayer says what one kind of event is.
type sayer func(Units, entry.Event) string

// says makes a sayer of one for the kind's own struct.
func says[E entry.Event](say func(Units, E) string) sayer {
	return func(u Units, ev entry.Event) string { return say(u, ev.(E)) }
}

// always is for events that say no more than their kind.
func always(text string) sayer { return func(Units, entry.Event) string { return text } }

// eventWords has the words of every kind (tested).
var eventWords map[entry.Kind]sayer

func init() { // an amendment speaks of another event, so this speaks of itself
	eventWords = map[entry.Kind]sayer{
		entry.KindLight: says(func(_ Units, ev entry.Light) string {
			return "fire lit in " + orElse(ev.Furnace.Name, "a furnace without a name") + again(ev)
		}),
		entry.KindPhase:  says(func(_ Units, ev entry.PhaseSet) string { return phaseSet(ev.Phase) }),
		entry.KindRecipe: says(func(u Units, ev entry.Recipe) string { return "next charge: " + u.AllParts(ev.Next) }),
		entry.KindFill:   says(func(u Units, ev entry.Fill) string { return "fill: " + u.AllParts(ev.Parts) }),
		entry.KindCharge: says(func(u Units, ev entry.Charge) string { return "charge: " + u.AllParts(ev.Parts) }),
		entry.KindLevel:  says(func(_ Units, ev entry.Level) string { return "level: " + string(ev.Remark) }),
		entry.KindDip:    says(Units.dip),
		entry.KindPoke:   always("poked the burden"),
		entry.KindBlast:  says(Units.blast),
		entry.KindRod:    always("rodded the tuyere"),
		entry.KindTuyere: says(Units.tuyere),
		entry.KindTap:    says(func(u Units, ev entry.Tap) string { return joined("tapped slag", u.mass(ev.Mass)) }),
		entry.KindArch: says(func(_ Units, ev entry.Arch) string {
			if ev.Open {
				return "arch opened"
			}
			return "arch closed"
		}),
		entry.KindLook: says(func(_ Units, ev entry.Look) string { return string(ev.At) + ": " + ev.Sees }),
		entry.KindTemperature: says(func(u Units, ev entry.Temperature) string {
			return joined(u.Value(float64(ev.Degrees), "°C", 0), ev.Where)
		}),
		entry.KindWeigh: says(Units.weigh),
		entry.KindSample: says(func(_ Units, ev entry.Sample) string {
			return joined(joined("sample of "+orElse(ev.Of, "slag"), ev.Label), ev.Note)
		}),
		entry.KindOreHeld: says(func(_ Units, ev entry.OreHeld) string {
			if ev.Again {
				return "ore goes in again"
			}
			return "ore held back"
		}),
		entry.KindLastOre:  always("last ore is in"),
		entry.KindBurnDown: always("burn-down begins"),
		entry.KindExtract: says(func(_ Units, ev entry.Extract) string {
			if ev.None {
				return "opened: no bloom"
			}
			return joined("bloom taken out", ev.From)
		}),
		entry.KindPause:    says(func(_ Units, ev entry.Pause) string { return joined("pause", ev.Why) }),
		entry.KindResume:   always("work goes on"),
		entry.KindHandOver: says(func(_ Units, ev entry.HandOver) string { return joined("handed over to "+ev.To, ev.Covers) }),
		entry.KindForgeHeat: says(func(_ Units, ev entry.ForgeHeat) string {
			return joined("forge heat "+strconv.Itoa(ev.Number), ev.Step)
		}),
		entry.KindNote: says(func(_ Units, ev entry.Note) string { return "note: " + ev.Text }),
		entry.KindStrike: says(func(_ Units, ev entry.Strike) string {
			if ev.Moved != "" {
				return "moved an entry to " + ev.Moved
			}
			return "crossed out an entry"
		}),
		entry.KindAmend: says(func(u Units, ev entry.Amend) string {
			if ev.Event == nil {
				return "changed the time of an entry"
			}
			return "changed an entry to " + u.Event(ev.Event)
		}),
		entry.KindKeys:        says(func(_ Units, ev entry.Keys) string { return "keys: " + strconv.Itoa(len(ev.Pressed)) }),
		entry.KindAcknowledge: says(func(_ Units, ev entry.Acknowledge) string { return "seen: " + ev.Rule }),
		entry.KindCaution:     says(func(_ Units, ev entry.CautionShown) string { return "caution shown: " + ev.Caution }),
		entry.KindSetting:     says(func(_ Units, ev entry.Setting) string { return "setting " + ev.Name + ": " + ev.Value }),
		entry.KindClockJump: says(func(_ Units, ev entry.ClockJump) string {
			if ev.ByMs == 0 && !ev.Right.IsZero() {
				return "the clock stood wrong: it was " + ev.Right.Format(Clock) + " then"
			}
			return "the clock was set " + By(time.Duration(ev.ByMs)*time.Millisecond)
		}),
		entry.KindTestimony: says(func(_ Units, ev entry.Testimony) string { return joined("warning "+ev.State+": "+ev.Rule, ev.Text) }),
	}
	maps.Copy(eventWords, houseWords)
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
	add(b.Blower != "", OtherBlower(b.Blower))
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

// OtherBlower is a blower that took the place of another.
func OtherBlower(name string) string { return "now from " + name }

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
	what := weighedThing(w)
	if w.Closed {
		return "will not be weighed: " + what
	}
	said := "weighed: " + what + " " + u.Kg(w.Mass)
	if w.PlusMinus.Known {
		said += " ± " + u.Kg(w.PlusMinus.Value)
	}
	if w.State != "" {
		said += ", " + string(w.State)
	}
	if w.InWater.Known {
		said += inWater(u, w.InWater.Value, w.Soaked)
		if of := account.SlagByDensity(float64(w.Mass), float64(w.InWater.Value), w.Soaked); of.Known {
			said += ": " + SlagBand(of.Low, of.High)
		}
	}
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

// inWater is what something weighs hung in water.
func inWater(u Units, kg entry.Kilogram, soaked bool) string {
	said := ", in water " + u.Kg(kg)
	if soaked {
		return said + ", soaked"
	}
	return said
}

// weighedThing is what lay on the scales.
func weighedThing(w entry.Weigh) string {
	switch w.What {
	case entry.WeighMeasure, entry.WeighLot:
		return orElse(w.Name, string(w.What))
	case entry.WeighCharcoalLeft:
		return "charcoal left"
	case entry.WeighWall:
		return "wall lost"
	case entry.WeighSlag:
		if w.Where != "" {
			return "slag of the " + string(w.Where)
		}
	}
	return string(w.What)
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
