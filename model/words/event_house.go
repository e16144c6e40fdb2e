package words

import (
	"maps"
	"slices"
	"strconv"
	"strings"

	"chargehand/model/entry"
	"chargehand/model/lot"
)

// houseWords are the words of the days before and after, and of what is rare on
// the day.
var houseWords = map[entry.Kind]sayer{
	entry.KindIncident: says(func(_ Units, ev entry.Incident) string {
		said := "incident: " + string(ev.What)
		if ev.CO.Known {
			said += ", " + Number(float64(ev.CO.Value), 0) + " ppm carbon monoxide"
		}
		return joined(joined(said, ev.Where), ev.Note)
	}),
	entry.KindWall: says(func(_ Units, ev entry.WallSeen) string {
		said := joined("wall: "+string(ev.What), ev.Where)
		if ev.With != "" {
			said += ", with " + ev.With
		}
		return said
	}),
	entry.KindWeather: says(func(u Units, ev entry.Weather) string {
		said := "weather"
		if ev.Air.Known {
			said += ", " + u.Value(float64(ev.Air.Value), "°C", 0)
		}
		if ev.Rain != "" {
			said += ", rain: " + ev.Rain
		}
		if ev.Wind != "" {
			said += ", wind: " + ev.Wind
		}
		return said
	}),
	entry.KindAgainFromHere: says(func(_ Units, ev entry.AgainFromHere) string { return joined("planned again from here", ev.Taken) }),
	entry.KindSealed: says(func(_ Units, ev entry.Sealed) string {
		return "furnace number " + strconv.FormatInt(ev.Number, 10) + ", sealed"
	}),
	entry.KindOpened: always("furnace number opened"),
	entry.KindRemind: says(func(_ Units, ev entry.Remind) string {
		if ev.Ended {
			return "no more reminding: " + ev.Word
		}
		said := "remind: " + ev.Word
		if !ev.At.IsZero() {
			said += ", at " + ev.At.Format(Clock)
		}
		if ev.Every.Known {
			said += ", every " + Number(float64(ev.Every.Value), 0) + " min"
		}
		return said
	}),

	entry.KindFurnace: says(func(_ Units, ev entry.FurnaceBuilt) string {
		return joined("furnace "+ev.Furnace.Name, string(ev.Why))
	}),
	entry.KindLot: says(func(u Units, ev entry.LotStored) string {
		said := joined("lot "+ev.Lot.Name, u.mass(ev.Lot.Mass))
		if m := ev.Lot.Moisture; m.Known {
			said += ", " + Number(100*lot.OfWeight(m.Value), 1) + " % water"
		}
		for _, s := range ev.Lot.Signs {
			said += ", " + string(s)
		}
		return said
	}),
	entry.KindMeasure: says(func(u Units, ev entry.MeasureNamed) string {
		return joined("measure "+ev.Measure.Name, u.mass(ev.Measure.Mass))
	}),
	entry.KindPlan:         says(func(_ Units, ev entry.Plan) string { return joined("plan "+ev.Name, ev.Taken) }),
	entry.KindDeed:         says(Units.deed),
	entry.KindAssay:        says(func(_ Units, ev entry.Assay) string { return assay("assay", ev) }),
	entry.KindSampleResult: says(func(_ Units, ev entry.SampleResult) string { return assay("the lab on "+ev.Sample, ev.Assay) }),
	entry.KindDrying: says(func(_ Units, ev entry.Drying) string {
		said := "drying the furnace"
		if ev.Day.Known {
			said += ", day " + Number(float64(ev.Day.Value), 0)
		}
		if ev.Fires.Known {
			said += ", " + many(int(ev.Fires.Value), "small fire")
		}
		if ev.Cracks != "" {
			said += ", cracks: " + ev.Cracks
		}
		return said
	}),
	entry.KindPlanTicked: says(func(_ Units, ev entry.PlanTicked) string {
		if ev.Done {
			return "before lighting, done: " + ev.Item
		}
		return "before lighting, still to do: " + ev.Item
	}),
	entry.KindWallWords: always("own lines for the wall and before lighting"),
	entry.KindPiece: says(func(u Units, ev entry.Piece) string {
		said := joined(joined(PieceKind(ev.Form), ev.Name), u.mass(ev.Mass))
		if ev.EndsAs != "" {
			said += ", " + pieceEnd(ev.EndsAs)
		}
		return joined(said, ev.To)
	}),
	entry.KindForgeSession: says(Units.forgeSession),
	entry.KindHeat:         says(func(_ Units, ev entry.Heat) string { return "in the forge fire: " + many(len(ev.Pieces), "piece") }),
	entry.KindHeatOver: says(func(_ Units, ev entry.HeatOver) string {
		return "out of the forge fire: " + many(len(ev.Pieces), "piece")
	}),
	entry.KindPieceWeighed: says(func(u Units, ev entry.PieceWeighed) string {
		return joined("piece weighed: "+u.Kg(ev.Mass), string(ev.State))
	}),
	entry.KindPieceTested: says(func(_ Units, ev entry.PieceTested) string {
		return joined(joined(ev.Test+" test: "+ev.Result, ev.Place), ev.Note)
	}),
	entry.KindLearnt: says(func(_ Units, ev entry.Learnt) string {
		return "learnt of " + ev.Of + ", from " + many(len(ev.From), "smelt")
	}),
	entry.KindLesson:  says(func(_ Units, ev entry.Lesson) string { return "for next time: " + ev.Text }),
	entry.KindMapping: says(func(_ Units, ev entry.Mapping) string { return "how the columns of " + ev.Name + " are read" }),
	entry.KindDraft: says(func(_ Units, ev entry.Draft) string {
		if len(ev.Typed) == 0 {
			return "draft on " + ev.Screen + " ended"
		}
		return "draft on " + ev.Screen
	}),
}

func many(n int, what string) string {
	if n == 1 {
		return "1 " + what
	}
	return strconv.Itoa(n) + " " + plural(what)
}

// deed is what was done, taken and given: "roasted: 40 kg pond, gives 31 kg
// pond roasted".
func (u Units) deed(d entry.Deed) string {
	said := orElse(string(d.Does), "done with the stores")
	if in := u.amounts(d.In); in != "" {
		said += ": " + in
	}
	if out := u.amounts(d.Out); out != "" {
		if len(d.In) > 0 {
			said += ", gives " + out
		} else {
			said += ": " + out
		}
	}
	if fuel := u.amounts(d.Fuel); fuel != "" {
		said += ", burning " + fuel
	}
	if c := d.Cost; c != nil {
		said += ", cost " + strings.TrimSpace(Number(float64(c.Amount), 2)+" "+c.Currency)
	}
	return joined(said, d.Note)
}

func (u Units) amounts(as []entry.Amount) string {
	said := make([]string, len(as))
	for i, a := range as {
		said[i] = u.Amount(a)
	}
	return strings.Join(said, " and ")
}

// Amount is how much of a lot: "31 kg roasted", "2 sacks of pond", "some sand".
// A lot that goes by its uid is named by who knows the house.
func (u Units) Amount(a entry.Amount) string {
	name, _ := a.Lot.Name()
	of := func(s, sep string) string {
		if name == "" {
			return s
		}
		return s + sep + name
	}
	measure := a.Measure
	if n, ok := entry.UID(a.Measure).Name(); ok {
		measure = n
	}
	switch {
	case a.Mass.Known:
		return of(u.Kg(a.Mass.Value), " ")
	case a.Count.Known && measure != "":
		return of(Counted(a.Count.Value, measure), " of ")
	case a.Stacked.Known:
		return of(Number(float64(a.Stacked.Value), 2)+" m³ stacked", " of ")
	case a.Some:
		return of("some", " ")
	}
	return of("an amount not said", " of ")
}

func assay(said string, a entry.Assay) string {
	for _, oxide := range slices.Sorted(maps.Keys(a.Parts)) {
		said += ", " + oxide + " " + Number(float64(a.Parts[oxide].Percent), 1) + " %"
	}
	if a.Loss.Known {
		said += ", loss on ignition " + Number(float64(a.Loss.Value), 1) + " %"
	}
	if lot, ok := a.Lot.Name(); ok {
		said = lot + ": " + said
	}
	return joined(said, string(a.Basis))
}

func (u Units) forgeSession(s entry.ForgeSession) string {
	did := make([]string, len(s.Did))
	for i, d := range s.Did {
		did[i] = string(d)
	}
	said := joined("at the forge", strings.Join(did, ", "))
	if s.Heats.Known {
		said += ", " + many(int(s.Heats.Value), "heat")
	}
	if s.Hours.Known {
		said += ", " + Number(float64(s.Hours.Value), 1) + " h"
	}
	if s.Fuel.Kg.Known {
		said += ", " + u.Kg(s.Fuel.Kg.Value) + " " + orElse(s.Fuel.What, "fuel")
	}
	for _, m := range s.After {
		said += ", then " + u.Kg(m.Mass)
	}
	return said
}

// PieceKind is what a piece is.
func PieceKind(k entry.PieceKind) string {
	switch k {
	case entry.HalfPiece:
		return "half of a bloom"
	case entry.CropEnd:
		return "crop end"
	case entry.Finished:
		return "finished piece"
	}
	return orElse(string(k), "piece")
}

func pieceEnd(e entry.PieceEnd) string {
	switch e {
	case entry.EndGiven:
		return "given away"
	case entry.EndSample:
		return "kept as a sample"
	}
	return string(e)
}
