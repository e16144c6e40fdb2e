package words

import (
	"strconv"
	"strings"

	"chargehand/model/doubt"
	"chargehand/model/entry"
)

// doubtWords says of each doubt what was said and why it can hardly be, and in a few words
// what was doubted, for the mark of what was kept all the same.
var doubtWords = map[doubt.Name]struct {
	says func(u Units, d doubt.Doubt) string
	mark string
}{
	doubt.BelowFloor: {func(u Units, d doubt.Doubt) string {
		return "a dip of " + u.cm(d.Said) + ": the floor is at " + u.cm(d.Against)
	}, "a dip below the floor"},
	doubt.BelowTuyere: {func(u Units, d doubt.Doubt) string {
		return "a dip of " + u.cm(d.Said) + ": the tuyere is at " + u.cm(d.Against)
	}, "a dip below the tuyere"},
	doubt.AboveRim: {func(u Units, d doubt.Doubt) string {
		return u.cm(d.Said) + " up: the rim is at " + u.cm(d.Against)
	}, "a level above the rim"},
	doubt.BlastJumps: {func(u Units, d doubt.Doubt) string {
		return u.Value(d.Said, "l/min", 1) + ": the last was " + u.Value(d.Against, "l/min", 0)
	}, "a blast far from the last"},
	doubt.BlastForBore: {func(u Units, d doubt.Doubt) string {
		takes := ": this bore takes from "
		if d.Said > d.Against {
			takes = ": this bore takes up to "
		}
		return u.Value(d.Said, "l/min", 1) + takes + u.Value(d.Against, "l/min", 0)
	}, "a blast far from what the bore takes"},
	doubt.MoreThanOre: {func(u Units, d doubt.Doubt) string {
		return u.kg(d.Said) + " of iron from " + u.kg(d.Against) + " of ore"
	}, "more iron than the ore holds"},
	doubt.SlagOverOre: {func(u Units, d doubt.Doubt) string {
		return u.kg(d.Said) + " of slag from " + u.kg(d.Against) + " of ore"
	}, "more slag than the ore gives"},
	doubt.WeighsNothing: {func(_ Units, d doubt.Doubt) string { return d.Of + " weighs nothing" }, "it weighs nothing"},
	doubt.MeasureJumps: {func(u Units, d doubt.Doubt) string {
		return d.Of + " " + u.kg(d.Said) + ": it was " + u.kg(d.Against)
	}, "a measure far from what it weighed"},
	doubt.TooHeavyToLift: {func(u Units, d doubt.Doubt) string {
		return d.Of + " " + u.kg(d.Said) + ": too heavy to lift"
	}, "a measure too heavy to lift"},
	doubt.MoreThanShaft: {func(u Units, d doubt.Doubt) string {
		return u.kg(d.Said) + " of charcoal: the shaft holds " + u.kg(d.Against)
	}, "more charcoal than the shaft holds"},
	doubt.OreOverCharcoal: {func(u Units, d doubt.Doubt) string {
		return u.kg(d.Said) + " of ore on " + u.kg(d.Against) + " of charcoal"
	}, "far more ore than charcoal"},
	doubt.HotterThanFire: {func(u Units, d doubt.Doubt) string {
		return u.Value(d.Said, "°C", 0) + ": hotter than such a fire gets"
	}, "hotter than such a fire gets"},
	doubt.ColderThanGlow: {func(u Units, d doubt.Doubt) string {
		return u.Value(d.Said, "°C", 0) + " in the peep: too cold to glow"
	}, "a peep too cold to glow"},
	doubt.AirOutside: {func(u Units, d doubt.Doubt) string {
		if d.Said < d.Against {
			return u.Value(d.Said, "°C", 0) + " outside: colder than such a day gets"
		}
		return u.Value(d.Said, "°C", 0) + " outside: read it in the shade, far from fire"
	}, "no air that a blower draws"},
	doubt.TuyereTooFar: {func(u Units, d doubt.Doubt) string {
		return "a tip " + u.cm(d.Said) + " in: the bore is " + u.cm(d.Against)
	}, "a tuyere through the far wall"},
	doubt.TuyereTooWide: {func(u Units, d doubt.Doubt) string {
		return "a tuyere of " + u.Value(d.Said, "mm", 0) + ": the bore is " + u.Value(d.Against, "mm", 0)
	}, "a tuyere wider than the shaft"},
	doubt.FurnaceSize: {func(u Units, d doubt.Doubt) string {
		if d.Of == doubt.TuyereMM {
			return "a " + d.Of + " of " + u.Value(d.Said, "mm", 1) + ", not cm"
		}
		said := "a " + d.Of + " of " + u.cm(d.Said)
		if d.Against > 0 {
			said += " over one of " + u.cm(d.Against)
		}
		return said
	}, "a furnace of a rare size"},
}

func (u Units) cm(v float64) string { return u.Value(v, "cm", 0) }
func (u Units) kg(v float64) string { return u.Kg(entry.Kilogram(v)) }

// Doubt says what was keyed and why it can hardly be.
func (u Units) Doubt(d doubt.Doubt) string {
	if w, ok := doubtWords[d.Name]; ok {
		return w.says(u, d)
	}
	if w, ok := houseDoubts[d.Name]; ok {
		return w.says(u, d)
	}
	return doubted(d.Name)
}

// KeptThough is the mark of what was kept though it was doubted: "sure: a dip below the
// floor"; empty without a doubt. A doubt of a newer version stands as it is named.
func KeptThough(sure string) string {
	var said []string
	for _, n := range doubt.Split(sure) {
		said = append(said, doubted(n))
	}
	if len(said) == 0 {
		return ""
	}
	return "sure: " + strings.Join(said, ", ")
}

// SureLine says of an entry what was doubted about it: "entry 12, dip 500 cm below the
// rim; sure: a dip below the floor".
func SureLine(seq uint64, says, sure string) string {
	return "entry " + strconv.FormatUint(seq, 10) + ", " + says + "; " + KeptThough(sure)
}

func doubted(n doubt.Name) string {
	if w, ok := doubtWords[n]; ok {
		return w.mark
	}
	if w, ok := houseDoubts[n]; ok {
		return w.mark
	}
	return strings.ReplaceAll(string(n), "_", " ")
}
