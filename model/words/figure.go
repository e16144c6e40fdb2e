package words

import (
	"math"
	"strconv"
	"strings"
	"time"

	"chargehand/model/entry"
	"chargehand/model/figure"
)

// What the big digits show.
const (
	SinceLastCharge = "since last charge"
	SinceLit        = "since it was lit"
	SinceFill       = "since the fill began"
	SinceMainBurn   = "main burn for"
	NextChargeIn    = "next charge in"
	BooksIt         = "books it"
	ToTheFire       = "to the fire"
	ChargeLate      = "charge LATE by"
	BurningDown     = "burning down for"
	SmeltTook       = "the smelt took"
	WorkPaused      = "work is paused"
)

// What stands beside them.
const (
	NextCharge   = "next charge"
	NextIsUnset  = "not set yet"
	NoMoreOre    = "the last ore is in"
	OreIsHeld    = "ore is held"
	NoMoreCharge = "no more charges"
	OpenMeasure  = "in the charge now"
	MinutesShort = "min"
)

// The names of the figures, in the order in which they always stand.
const (
	LineRatio    = "ratio"
	LineSoFar    = "so far"
	LineBurn     = "burn"
	LineStack    = "stack"
	LineBlast    = "blast"
	LineCharcoal = "charcoal"
	LineOre      = "ore"
	LineBloom    = "bloom"
	LinePressure = "pressure"
)

// What is said beside a figure.
const (
	LastFive        = "last five"
	SinceFirstOre   = "since first ore"
	FillIncluded    = "fill included"
	NotKnown        = "unknown"
	AtLeastWord     = "at least"
	NoOreYet        = "no ore yet"
	NeedsCharge     = "after the first charge"
	NeedsCharges    = "after two charges"
	SomeUnweighed   = "some was not weighed"
	AnyMeasure      = "measure"
	NeedsOre        = "after the first ore"
	NeedsSizes      = "needs bore and stack"
	NeedsFill       = "after the fill"
	NoneLeft        = "none"
	NeedsBlast      = "key the blast to know it"
	NeverKeyed      = "no l/min was kept"
	NeedsMeter      = "not known in l/min"
	NeedsMeterBrief = "not in l/min" // the same where there is little room
	NeedsWeighing   = "weigh it when it is out"
	NeverWeighed    = "will not be weighed"
	BlastIsOff      = "off"
	BlastIsOn       = "on"
	NotKnownDip     = "not known: dip it"
	NotKnownOnly    = "not known"
	TooLittleSeen   = "too little seen"
	FarApart        = NotKnownOnly + ", " + TooLittleSeen
	OfCarbonGas     = "of CO and CO2"
	SeenWord        = "seen"
	MoreThanBlast   = "too fast for the air"
	LessThanBlast   = "too slow for the air"
	AsTheBlast      = "fits the blast"
	BlastUnread     = "blast not read"
	AtTheMark       = "at the mark"
	NotKept         = "NOT KEPT"
	KeptWord        = "kept"
	Keeping         = "being kept"
	MarkWord        = "mark"
	UsualSizes      = "usual sizes where none was given"
	HearthUnknown   = "slag unknown"
	StripMinutes    = "minutes"
	StripCharge     = "charge"
	StripOre        = "ore"
	StripNow        = "now"
	StripNone       = "each charge will stand here as a bar: minutes up, ore down"
	WindowTooSmall  = "make the window larger"
)

// Apart is what is said of a figure with its ends, or in the place of that, where they
// lie so far apart that they tell nothing, that it is not known.
func Apart(f figure.Figure, says string) string {
	if f.Wide() {
		return FarApart
	}
	return says
}

// Basis says what a figure rests on.
func Basis(b figure.Basis) string {
	switch b {
	case figure.Measured:
		return "measured"
	case figure.Estimated:
		return "estimated"
	case figure.Guessed:
		return "a guess"
	}
	return NotKnown
}

// Process is what happens at a height of the shaft.
func Process(p figure.Process) string {
	return [...]string{
		figure.Drying: "drying", figure.Roasting: "roasting", figure.RedToBlack: "turns black",
		figure.LosesOxygen: "oxygen off", figure.IronForms: "iron forming", figure.SlagRuns: "slag runs",
		figure.Burning: "burning", figure.Heating: "no ore yet",
	}[p]
}

// Lasted is a time as it is said: "45 s", "14 min", "3 h 12 min".
func Lasted(d time.Duration) string {
	switch {
	case d < 2*time.Minute:
		return strconv.Itoa(int(d.Seconds())) + " s"
	case d < time.Hour:
		return strconv.Itoa(int(d.Minutes())) + " min"
	}
	m := int(d.Minutes())
	return strconv.Itoa(m/60) + " h " + strconv.Itoa(m%60) + " min"
}

// Stopwatch is a time as big digits show it: "8:40", and from 100 minutes on
// "2h05".
func Stopwatch(d time.Duration) string {
	s := max(int(d/time.Second), 0)
	if s < 100*60 {
		return strconv.Itoa(s/60) + ":" + twoDigits(s%60)
	}
	return strconv.Itoa(s/3600) + "h" + twoDigits(s/60%60)
}

func twoDigits(n int) string {
	if n < 10 {
		return "0" + strconv.Itoa(n)
	}
	return strconv.Itoa(n)
}

// Usual is this smelt's usual interval, and how the time now stands to it.
func Usual(usual, since time.Duration) string {
	m := int(math.Round(usual.Minutes()))
	if past := int((since - usual).Minutes()); past >= 1 {
		return strconv.Itoa(past) + " min past the usual " + strconv.Itoa(m)
	}
	return "usual here " + strconv.Itoa(m) + " min"
}

// UsualBrief is the same past the usual where there is less room, the longest first;
// none before.
func UsualBrief(usual, since time.Duration) []string {
	m := strconv.Itoa(int(math.Round(usual.Minutes())))
	past := int((since - usual).Minutes())
	if past < 1 {
		return nil
	}
	return []string{strconv.Itoa(past) + " past the usual " + m, strconv.Itoa(past) + " past usual " + m}
}

// WasDue is when a charge that is late was due.
func WasDue(at time.Time) string { return "was due at " + at.Format(Clock) }

// Between is a spread of whole minutes to come.
func Between(low, high int) string {
	switch {
	case high <= 0:
		return "any moment now"
	case low <= 0:
		return "within " + strconv.Itoa(high) + " min"
	}
	return "between " + strconv.Itoa(low) + " and " + strconv.Itoa(high) + " min"
}

// ThirdIn is when the third charge from now is due, by its number; it stands beside
// the next.
func ThirdIn(number, low, high int) string {
	return "charge " + ThirdInBrief(number, low, high)
}

// thirdWhen is that without which charge it is.
func thirdWhen(low, high int) string {
	switch {
	case high <= 0:
		return "is due too"
	case low <= 0:
		return "within " + strconv.Itoa(high) + " min"
	}
	return strconv.Itoa(low) + "-" + strconv.Itoa(high) + " min"
}

// ThirdInShort is the same in fewer words.
func ThirdInShort(number, low, high int) string {
	charge, when := "charge "+strconv.Itoa(number), thirdWhen(low, high)
	if high <= 0 {
		return charge + " " + when
	}
	return charge + ": " + when
}

// ThirdInBrief is the same where there is little room.
func ThirdInBrief(number, low, high int) string {
	charge, when := strconv.Itoa(number), thirdWhen(low, high)
	if low > 0 {
		return charge + " in " + when
	}
	return charge + " " + when
}

// Ratio is ore to charcoal.
func Ratio(v float64) string { return fixed(v, 2) + " : 1" }

// fixed is a number in just so many decimals.
func fixed(v float64, decimals int) string { return strconv.FormatFloat(v, 'f', decimals, 64) }

// AMeasure is how long one measure lasts: "11 min a bucket".
func AMeasure(minutes float64, measure string) string {
	return strconv.Itoa(int(math.Round(minutes))) + " min a " + measure
}

// UnderMark is how far the burden stands below the charging mark.
func (u Units) UnderMark(cm float64) string {
	by := Number(u.Shown(math.Abs(cm), "cm"), u.decimals(cm, "cm", 0))
	switch n := math.Round(cm); {
	case n > 1:
		return by + " under the mark"
	case n < -1:
		return by + " over the mark"
	}
	return AtTheMark
}

// MeasuredAt is when something was last read.
func MeasuredAt(at time.Time) string { return "measured " + at.Format(Clock) }

// DippedAt is when the burden was last dipped: what it has done since is reckoned.
func DippedAt(at time.Time) string { return "dipped " + at.Format(Clock) }

// SetAt is when something was last set.
func SetAt(at time.Time) string { return "set " + at.Format(Clock) }

// OffSince is when the blast was turned off.
func OffSince(at time.Time) string { return "since " + at.Format(Clock) }

// LastAgo is how long ago the last charge went in.
func LastAgo(stopwatch string) string { return "last " + stopwatch + " ago" }

// AboutUsual stands beside a reading that is to be held against the usual.
func AboutUsual(v string) string { return "about " + v + " is usual" }

// PerArea is the blast over the bore.
func (u Units) PerArea(v float64) string {
	const unit = "l/min/cm2"
	return fixed(u.Shown(v, unit), 2) + " " + u.Name(unit)
}

// PerAreaBrief is the same where there is little room.
func (u Units) PerAreaBrief(v float64) string {
	const unit = "l/min/cm2"
	return fixed(u.Shown(v, unit), 2) + " " + strings.ReplaceAll(u.Name(unit), " a ", "/")
}

// WeighA says which measure has to be weighed for a figure to be known.
func WeighA(measure string) string { return "weigh a " + orElse(measure, AnyMeasure) }

// Measures names what a part is counted in: "bucket", "scoops".
func Measures(p entry.Part) string {
	name := orElse(p.Measure, AnyMeasure)
	if p.Count.Value > 1 {
		name = plural(name)
	}
	return name
}

// Setting is what a volume was taken from that nobody read off a meter.
func Setting(b entry.Blast) string {
	switch {
	case b.Gate != "":
		return Gate(b.Gate)
	case b.Strokes.Known:
		return Strokes(float64(b.Strokes.Value))
	case b.Tuyeres.Known:
		return Tuyeres(float64(b.Tuyeres.Value))
	case b.Blower != "":
		return b.Blower
	}
	return BlastIsOn
}

// Gate is a gate mark.
func Gate(mark string) string { return "gate " + mark }

// Strokes is how fast the bellows go.
func Strokes(n float64) string { return Number(n, 0) + " strokes a minute" }

// Tuyeres is how many tuyeres stand open.
func Tuyeres(n float64) string { return Number(n, 0) + " tuyeres open" }

// EntriesKept is how much of the log is safe.
func EntriesKept(n int) string { return KeptWord + " " + strconv.Itoa(n) }

// InNoBook says that what is shown is nobody's record.
const InNoBook = "in no book"

// EntriesNotKept is how much of it is not.
func EntriesNotKept(n int) string { return NotKept + " " + strconv.Itoa(n) }

// ByWhom is who is in charge.
func ByWhom(initials string) string { return "by " + initials }

// WarningSince is since when a warning stands, whether somebody has seen it,
// and how many more there are.
func WarningSince(at time.Time, seen bool, more int) string {
	said := WarningSeen(seen, more)
	if more > 0 { // that there are more says more than the time, and both have no room
		return strconv.Itoa(more) + " more" + strings.TrimPrefix(said, "+"+strconv.Itoa(more))
	}
	return strings.TrimPrefix(said+", "+at.Format(Clock), ", ")
}

// WarningSeen is the same without the time.
func WarningSeen(seen bool, more int) string {
	var said []string
	if more > 0 {
		said = append(said, "+"+strconv.Itoa(more))
	}
	if seen {
		said = append(said, SeenWord)
	}
	return strings.Join(said, ", ")
}

// ThisBig is a size of the window.
func ThisBig(w, h int) string {
	return "at least " + strconv.Itoa(w) + " by " + strconv.Itoa(h) + " characters"
}

// LevelNeeds says what would give the slag a level, nothing where nothing is missing.
func LevelNeeds(m figure.LevelMissing) (needs []string) {
	if m.Weighing {
		needs = append(needs, "weigh its slag once")
	}
	if m.Depth {
		needs = append(needs, "key tuyere above the floor")
	}
	return needs
}
