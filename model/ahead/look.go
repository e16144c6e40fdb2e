package ahead

import (
	"math"
	"slices"
	"time"

	"chargehand/model/entry"
	"chargehand/model/figure"
	"chargehand/model/fold"
	"chargehand/model/session"
	"chargehand/model/solve"
	"chargehand/physics"
	"chargehand/physics/shaft"
)

// leastOre is from how much ore a share of it is told, kg of iron: the ash of charcoal holds
// a trace.
const leastOre = 0.1

// Outcome is what a choice comes to at the end of the hour, over the furnaces asked so far.
type Outcome struct {
	Name    Name
	Parts   entry.Parts  // of each charge
	LMin    float64      // the blast, where it is metered; else 0
	Hearth  physics.Band // C, with the solver's own band
	Shift   physics.Band // K, from now to the end of the hour
	Runs    physics.Band // chance in per cent that the slag runs; zero while there is too little slag
	OreDown physics.Band // per cent of the ore in by then
	Minutes physics.Band // from one charge to the next; zero where none is due
	Cold    int          // of the furnaces, in how many the hearth is cold at the end
	Cast    int          // and the iron cast
	each    []told
}

// told is what one furnace says of a choice.
type told struct {
	hearth, shift, runs, down, carbon, burns float64
	low, high                                float64 // K that the hearth may be lower or hotter
	seen                                     float64 // K by which the signs move it
	slag                                     bool
}

// Ahead is the next hour as far as it has been looked at.
type Ahead struct {
	At       time.Duration
	Asked    int       // furnaces asked
	Outcomes []Outcome // of each choice, the shown one first
	Lacks    bool      // the solver says nothing of this smelt
	Signs    figure.Signs
	Seen     float64 // K by which those move the hearth, in the middle of the furnaces
	Status   solve.Status
	Advice   Advice
}

// Looking goes through the furnaces one by one.
type Looking struct {
	s       session.Session
	at      time.Duration
	own     []entry.Entry
	signs   figure.Signs
	choices []choice
	ahead   Ahead
}

// Begin looks ahead of a smelt as it stands, or stood: of a session, at its moment and as known then.
func Begin(s session.Session) *Looking {
	l := &Looking{s: s, at: s.At(), signs: s.Reading().Signs, choices: choices(s)}
	known, irons := s.Reading().Known, s.Irons()
	for _, e := range s.Entries() {
		if (known == fold.All || e.Seq <= known) && l.happened(e) {
			l.own = append(l.own, irons.Into(e))
		}
	}
	l.ahead.At = l.at
	for _, c := range l.choices {
		l.ahead.Outcomes = append(l.ahead.Outcomes, Outcome{Name: c.name, Parts: c.parts, LMin: c.lMin * c.blast})
	}
	return l
}

// happened tells whether an entry is of the past at the moment: a log that was taken in holds the rest of its day too. What
// crosses out or changes another counts from when it is known.
func (l *Looking) happened(e entry.Entry) bool {
	if k := e.Kind(); k == entry.KindStrike || k == entry.KindAmend {
		return true
	}
	line, ok := l.s.Line(e.Seq)
	return !ok || line.At <= l.at
}

// Of looks at the whole of the next hour.
func Of(s session.Session) Ahead {
	l := Begin(s)
	for l.More() {
		l.Next()
	}
	return l.Ahead()
}

// More tells whether furnaces are left to ask.
func (l *Looking) More() bool {
	return !l.ahead.Lacks && l.ahead.Asked < Furnaces && len(l.own) > 0 && l.s.Phase() != "" && !l.s.Phase().Over()
}

// Next asks one more furnace about every choice. It takes some tens of milliseconds, after a long day the more.
func (l *Looking) Next() {
	f := plausible[l.ahead.Asked]
	own := f.as(l.own)
	v := &solve.Solver{Grid: shaft.Coarse}
	c := fold.Trace(own, fold.All, l.at)
	now := v.Solve(&c)
	if l.ahead.Status = now.Status; now.Status != solve.Computes {
		l.ahead.Lacks = true
		return
	}
	for i, ch := range l.choices {
		then := now
		if ch.over > 0 {
			c := fold.Trace(ch.entries(l.s, slices.Clip(own), l.at), fold.All, l.at+ch.over)
			then = v.Solve(&c)
		}
		if then.Status != solve.Computes {
			l.ahead.Lacks, l.ahead.Status = true, then.Status
			return
		}
		l.ahead.Outcomes[i].each = append(l.ahead.Outcomes[i].each, tell(now, then, l.signs, ch.over))
	}
	l.ahead.Asked++
}

// tell is one furnace's word. By how much the signs of now move its hearth, that stays so for the hour (assumed).
func tell(now, then solve.Solution, signs figure.Signs, over time.Duration) told {
	was, is := now.HearthBand(), signs.Hearth(now.HearthBand(), now.Hearth.Slag)
	heat := then.HearthBand()
	heat = physics.Band{P10: heat.P10 + is.P10 - was.P10, P50: heat.P50 + is.P50 - was.P50, P90: heat.P90 + is.P90 - was.P90}
	t := told{
		down: DownOf(then), hearth: physics.ToCelsius(heat.P50), low: heat.P50 - heat.P10, high: heat.P90 - heat.P50,
		shift: then.Hearth.Temperature - now.Hearth.Temperature, seen: is.P50 - was.P50, carbon: then.Hearth.BloomCarbon().P50,
	}
	if slag := then.Hearth.Slag; slag.Sum() > 1 {
		t.slag = true
		t.runs = 100 * slag.Running(heat).Runs
	}
	if over > 0 {
		t.burns = (then.Totals.CarbonBurned - now.Totals.CarbonBurned) / over.Minutes()
	}
	return t
}

// DownOf is how much of the ore's iron that went in has come down, per cent; 0 where there is no ore.
func DownOf(s solve.Solution) float64 {
	if s.Totals.OreIron <= leastOre {
		return 0
	}
	still := 0.0
	for _, layer := range s.Profile {
		still += layer.Ore.Sum()
	}
	return 100 * math.Max(0, 1-still/s.Totals.OreIron)
}

// Ahead is what has been told so far.
func (l *Looking) Ahead() Ahead {
	a := l.ahead
	a.Outcomes = slices.Clone(a.Outcomes)
	r := l.s.Reading()
	for i := range a.Outcomes {
		o := &a.Outcomes[i]
		if len(o.each) == 0 {
			continue
		}
		o.Cold, o.Cast = 0, 0
		for _, t := range o.each {
			if t.hearth < physics.SlagFreezes {
				o.Cold++
			}
			if t.carbon > physics.CastFrom {
				o.Cast++
			}
		}
		of := func(v func(told) float64) physics.Band { return spread(o.each, v) }
		o.Shift, o.OreDown = of(func(t told) float64 { return t.shift }), of(func(t told) float64 { return t.down })
		o.Hearth = withOwn(of(func(t told) float64 { return t.hearth }), o.each)
		if o.each[0].slag {
			o.Runs = of(func(t told) float64 { return t.runs })
		}
		if len(o.Parts) > 0 && r.HasDue {
			o.Minutes = r.Due.Next.Minutes
			if r.Usual > 0 {
				o.Minutes = r.Due.Next.Minutes.Scale(r.Usual.Minutes() / r.Due.Next.Minutes.P50)
			}
			if a.Outcomes[0].each[0].burns > 0 {
				ratio := spread(o.each, func(t told) float64 { return t.burns }).P50 / spread(a.Outcomes[0].each, func(t told) float64 { return t.burns }).P50
				o.Minutes = o.Minutes.Scale(1 / math.Max(0.2, ratio))
			}
		}
	}
	a.Signs = l.signs
	if a.Asked > 0 {
		a.Seen = spread(a.Outcomes[0].each, func(t told) float64 { return t.seen }).P50
	}
	a.Advice = advise(a)
	return a
}

// spread is the band of what the furnaces say: its 10th, 50th and 90th percentile.
func spread(each []told, of func(told) float64) physics.Band {
	vs := make([]float64, len(each))
	for i, t := range each {
		vs[i] = of(t)
	}
	return Spread(vs)
}

// Spread is the band of some values: their 10th, 50th and 90th percentile.
func Spread(values []float64) physics.Band {
	vs := slices.Sorted(slices.Values(values))
	at := func(share float64) float64 {
		x := share * float64(len(vs)-1)
		i := int(x)
		if i+1 >= len(vs) {
			return vs[len(vs)-1]
		}
		return vs[i] + (x-float64(i))*(vs[i+1]-vs[i])
	}
	return physics.Band{P10: at(0.1), P50: at(0.5), P90: at(0.9)}
}

// withOwn widens a hearth by how far each furnace's own may be off, taken as independent of which furnace it is.
func withOwn(b physics.Band, each []told) physics.Band {
	low, high := spread(each, func(t told) float64 { return t.low }).P50, spread(each, func(t told) float64 { return t.high }).P50
	return physics.Band{P10: b.P50 - math.Hypot(b.P50-b.P10, low), P50: b.P50, P90: b.P50 + math.Hypot(b.P90-b.P50, high)}
}

// Known tells whether there is a figure for the hearth at all.
func (a Ahead) Known() bool { return a.Asked > 0 && !a.Lacks }

// Unit is the unit of each figure of an outcome.
var Unit = map[string]string{"hearth": figure.Table[figure.HearthTemperature].Unit, "shift": "K", "runs": "%", "ore_down": figure.Table[figure.OreComeDown].Unit, "minutes": "min"}
