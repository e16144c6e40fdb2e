package rule

import (
	"cmp"
	"slices"
	"time"

	"chargehand/model/entry"
	"chargehand/model/fold"
)

// Moment is when a caution matters.
type Moment string

// The moments, in the order of a day.
const (
	AtLight     Moment = "light"
	AtBlast     Moment = "blast"
	AtCharge    Moment = "charge"
	AtOre       Moment = "ore"
	AtBlastLost Moment = "blast lost"
	AtTap       Moment = "tap"
	AtRain      Moment = "rain"
	AtWall      Moment = "wall"   // it is seen to give
	AtLength    Moment = "length" // the day is getting long
	AtExtract   Moment = "extract"
)

var moments = [...]Moment{AtLight, AtBlast, AtCharge, AtOre, AtBlastLost, AtTap, AtRain, AtWall, AtLength, AtExtract}

func (m Moment) place() int { return slices.Index(moments[:], m) }

// once tells whether a moment comes with the first of its kind alone: rain that goes on
// and a wall that cracks on are no other danger.
func (m Moment) once() bool { return m == AtRain || m == AtWall }

// Presses tells whether a caution of that moment does not wait for another to be read.
func (m Moment) Presses() bool { return m == AtBlastLost || m == AtWall }

// longDay is after how long a day counts as long (common practice: a working day is
// not half over then, and the bloom is still to come).
const longDay = 5 * time.Hour

// apart is how long a person is left alone after a caution, unless something comes
// up in between: one after the other at once, nobody reads them.
const apart = 2 * time.Minute

// Caution is one thing that may hurt. It never stands in the way of a key.
type Caution struct {
	ID     string
	Moment Moment
	Again  Moment // told anew when this comes to pass, "" for never: it is no longer what might be
	Source string
}

// The cautions. Package words has what they say.
const (
	CarbonMonoxide = "carbon monoxide"
	WetClay        = "wet clay"
	FireSpread     = "fire spread"
	BlowerInRain   = "blower in rain"
	Noise          = "noise"
	UnlitGas       = "unlit gas"
	Glare          = "glare"
	Zinc           = "zinc"
	BurnThrough    = "wall burn-through"
	BlowBack       = "blow-back"
	MoltenSlag     = "molten slag"
	Tiredness      = "tiredness"
	HotWork        = "hot work"
	Onlookers      = "onlookers"
	Silica         = "silica"
)

// Cautions is every caution, in the order of a day.
var Cautions = []Caution{
	{CarbonMonoxide, AtLight, "", "published: OSHA 29 CFR 1910.1000 (1971), 50 ppm over 8 h; published: NIOSH 1972, 35 ppm over 8 h, never above 200 ppm; assumed: 400 ppm for three hours and 1200 ppm, as a meter maker's table in print has them"},
	{WetClay, AtLight, "", "published: Markewitz, Wareham Forge, smelts of 2004 and 2017 lost to walls too wet"},
	{FireSpread, AtLight, "", common},
	{BlowerInRain, AtBlast, AtRain, "published: logs of 2004 to 2021, blowers that failed in a smelt, and one run in heavy rain; " + common},
	{Noise, AtBlast, "", "assumed: UK action at 80 and 85 dB(A), US OSHA 85 and 90 dB(A) over 8 h (both from memory, unverified)"},
	{UnlitGas, AtCharge, "", "published: DARC 2011, the gas had to be lit by hand; " + common},
	{Glare, AtCharge, "", "published: logs of 2004 to 2021, 1150 to 1350 °C before the tuyere; " + common},
	{Zinc, AtCharge, "", common},
	{BurnThrough, AtOre, AtWall, "published: DARC 2005, a wall that went when three quarters were done, patched with wire; published: course log of 2017, cracks patched while it ran"},
	{BlowBack, AtBlastLost, "", common},
	{MoltenSlag, AtTap, "", common},
	{Tiredness, AtLength, "", "assumed: published smelts took 7 to 23 h, one of 13 h alone; " + common},
	{HotWork, AtExtract, "", common},
	{Onlookers, AtExtract, "", "published: DARC 2005, onlookers took over and pulled a furnace apart"},
	{Silica, AtExtract, "", "published: OSHA 29 CFR 1926.1153 (2016), respirable crystalline silica 0.05 mg/m3 over 8 h"},
}

// Care is which moments of a smelt have come, and who was shown which caution. It is
// a value that lines change as they happen; the zero Care is before light.
type Care struct {
	come  [len(moments)]time.Duration // when each last came, plus one; 0 for never
	shown []shown
}

type shown struct {
	caution, by string
	at          time.Duration
}

// Take lets a line happen.
func (c *Care) Take(l fold.Line) {
	if ev, ok := l.Event.(entry.CautionShown); ok {
		c.shown = append(c.shown[:len(c.shown):len(c.shown)], shown{ev.Caution, l.Entry.By, l.At})
		return
	}
	if m, ok := momentOf(l.Event); ok && (c.come[m.place()] == 0 || !m.once()) {
		c.come[m.place()] = max(l.At, 0) + 1
	}
	if ore := entry.PartsIn(l.Event).Holds(entry.Ore); ore && c.come[AtOre.place()] == 0 {
		c.come[AtOre.place()] = max(l.At, 0) + 1
	}
	if l.At >= longDay && c.come[AtLength.place()] == 0 {
		c.come[AtLength.place()] = l.At + 1
	}
}

// Due gives the cautions whose moment has come and that one person has not been
// shown in this smelt, or not since it came to pass: what has come last before what came earlier.
func (c Care) Due(by string) []Caution {
	come := c.come
	come[AtLight.place()] = max(come[AtLight.place()], 1)
	var due []Caution
	for _, k := range Cautions {
		again := k.Again != "" && come[k.Again.place()] > 0
		if again && !c.was(k.ID, by, come[k.Again.place()]-1) {
			k.Moment = k.Again
			due = append(due, k)
		} else if !again && come[k.Moment.place()] > 0 && !c.was(k.ID, by, 0) {
			due = append(due, k)
		}
	}
	slices.SortStableFunc(due, func(a, b Caution) int { return cmp.Compare(come[b.Moment.place()], come[a.Moment.place()]) })
	return due
}

// was tells whether a person was shown a caution, at a moment or later.
func (c Care) was(id, by string, since time.Duration) bool {
	return slices.ContainsFunc(c.shown, func(s shown) bool { return s.caution == id && s.by == by && s.at >= since })
}

// Next is the caution to show a person now: the first that is due, once the one
// before had its time, or what it speaks of has come since.
func (c Care) Next(by string, now time.Duration) (Caution, bool) {
	due := c.Due(by)
	if len(due) == 0 {
		return Caution{}, false
	}
	for _, s := range c.shown {
		if s.by == by && now-s.at < apart && c.come[due[0].Moment.place()] <= s.at+1 {
			return Caution{}, false
		}
	}
	return due[0], true
}

// momentOf is the moment that an event brings: as early as it can be known, so
// that the caution comes before the hand does.
func momentOf(ev entry.Event) (Moment, bool) {
	switch ev := ev.(type) {
	case entry.Fill, entry.Charge:
		return AtCharge, true
	case entry.Blast:
		if ev.Off() {
			return AtBlastLost, true
		}
		return AtBlast, true
	case entry.Tap, entry.Arch:
		return AtTap, true
	case entry.Look:
		slag := ev.At == entry.AtSlag && ev.Sees == entry.SlagAtTuyere || ev.At == entry.AtSound && ev.Sees == entry.SoundGurgle
		return AtTap, slag
	case entry.BurnDown, entry.Extract:
		return AtExtract, true
	case entry.WallSeen:
		return AtWall, ev.What != entry.WallPatched
	case entry.Weather:
		return AtRain, ev.Wet()
	}
	return "", false
}
