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
	AtCharge    Moment = "charge"
	AtBlastLost Moment = "blast lost"
	AtTap       Moment = "tap"
	AtExtract   Moment = "extract"
)

var moments = [...]Moment{AtLight, AtCharge, AtBlastLost, AtTap, AtExtract}

func (m Moment) place() int { return slices.Index(moments[:], m) }

// Caution is one thing that may hurt. It never stands in the way of a key.
type Caution struct {
	ID     string
	Moment Moment
	Source string
}

// The cautions. Package words has what they say.
const (
	CarbonMonoxide = "carbon monoxide"
	WetClay        = "wet clay"
	UnlitGas       = "unlit gas"
	Glare          = "glare"
	BlowBack       = "blow-back"
	MoltenSlag     = "molten slag"
	HotWork        = "hot work"
	Silica         = "silica"
)

// Cautions is every caution, in the order of a day.
var Cautions = []Caution{
	{CarbonMonoxide, AtLight, "published: OSHA 29 CFR 1910.1000 (1971), 50 ppm over 8 h; published: NIOSH 1972, 35 ppm over 8 h, never above 200 ppm"},
	{WetClay, AtLight, "published: Markewitz, Wareham Forge, smelts of 2004 and 2017 lost to walls too wet"},
	{UnlitGas, AtCharge, "published: DARC 2011, the gas had to be lit by hand; " + common},
	{Glare, AtCharge, "published: logs of 2004 to 2021, 1150 to 1350 °C before the tuyere; " + common},
	{BlowBack, AtBlastLost, common},
	{MoltenSlag, AtTap, common},
	{HotWork, AtExtract, common},
	{Silica, AtExtract, "published: OSHA 29 CFR 1926.1153 (2016), respirable crystalline silica 0.05 mg/m3 over 8 h"},
}

// Care is which moments of a smelt have come, and who was shown which caution. It is
// a value that lines change as they happen; the zero Care is before light.
type Care struct {
	come  [len(moments)]time.Duration // when each last came, plus one; 0 for never
	shown []shown
}

type shown struct{ caution, by string }

// Take lets a line happen.
func (c *Care) Take(l fold.Line) {
	if ev, ok := l.Event.(entry.CautionShown); ok {
		c.shown = append(c.shown[:len(c.shown):len(c.shown)], shown{ev.Caution, l.Entry.By})
	}
	if m, ok := momentOf(l.Event); ok {
		c.come[m.place()] = max(l.At, 0) + 1
	}
}

// Due gives the cautions whose moment has come and that one person has not been
// shown in this smelt: what has come last before what came earlier.
func (c Care) Due(by string) []Caution {
	come := c.come
	come[AtLight.place()] = max(come[AtLight.place()], 1)
	var due []Caution
	for _, k := range Cautions {
		if come[k.Moment.place()] > 0 && !slices.Contains(c.shown, shown{k.ID, by}) {
			due = append(due, k)
		}
	}
	slices.SortStableFunc(due, func(a, b Caution) int { return cmp.Compare(come[b.Moment.place()], come[a.Moment.place()]) })
	return due
}

// CautionsDue gives the cautions that are due at a state of a smelt.
func CautionsDue(s fold.State, by string) []Caution {
	if s.Phase == "" {
		return nil
	}
	var c Care
	for l := range s.Lines.All() {
		c.Take(*l)
	}
	return c.Due(by)
}

// momentOf is the moment that an event brings: as early as it can be known, so
// that the caution comes before the hand does.
func momentOf(ev entry.Event) (Moment, bool) {
	switch ev := ev.(type) {
	case entry.Fill, entry.Charge:
		return AtCharge, true
	case entry.Blast:
		return AtBlastLost, ev.Off()
	case entry.Tap, entry.Arch:
		return AtTap, true
	case entry.Look:
		slag := ev.At == entry.AtSlag && ev.Sees == entry.SlagAtTuyere || ev.At == entry.AtSound && ev.Sees == entry.SoundGurgle
		return AtTap, slag
	case entry.BurnDown, entry.Extract:
		return AtExtract, true
	}
	return "", false
}

// Reread gives the cautions of a moment, for the key that shows them again.
func Reread(m Moment) []Caution {
	var cs []Caution
	for _, c := range Cautions {
		if c.Moment == m {
			cs = append(cs, c)
		}
	}
	return cs
}
