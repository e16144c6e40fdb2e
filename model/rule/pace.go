package rule

import (
	"math"
	"slices"
	"sort"
	"time"

	"chargehand/model/entry"
	"chargehand/model/fold"
	"chargehand/model/forecast"
)

// How long an interval of this smelt usually is and how far it strays: a
// robust level of the logarithms of its own undisturbed intervals since the
// last lasting change of the air, with a spread that leans on other smelts
// while its own are few. Everything that the rules know of usual intervals is
// in this file. It is not the forecast's pace: that one goes on through whatever
// befalls, since a charge is due all the same; this one says what is usual when
// nothing does.
const (
	// recent is over how many intervals the level goes.
	recent = 8
	// strayOthers is the mean absolute residual of the log interval over eight
	// published smelts, and strayWeight how many own intervals that counts as
	// (tried on the published logs: hindcast in model/forecast).
	strayOthers, strayWeight = 0.159, 2.0
	// strayLeast is the least standard deviation of a log interval: a charge
	// goes in a minute or two after it could. A guess.
	strayLeast = 0.10
	// sdOfMean turns a mean absolute residual into a standard deviation, for a
	// normal one: the root of half pi.
	sdOfMean = 1.2533

	z95 = 1.6449 // ends of a 90 % band: any table of the normal quantile
	z99 = 2.5758 // half a percent above

	// odd is how far the size of a charge may lie from the usual before its
	// interval says nothing of the pace.
	odd = 0.25
	// missing is after how many usual intervals an entry is missing rather
	// than a charge.
	missing = forecast.Missed
	// perMinute are the milliseconds to which the usual interval is rounded, so
	// that what becomes of a logarithm on another machine moves no onset.
	perMinute = 60000
	// lasting is how far the blast must change to be another blast.
	lasting = 0.10
)

// interval is what those up to one charge tell of the pace, in minutes.
type interval struct {
	clean     bool    // the interval that this charge ends is undisturbed
	minutes   float64 // its length
	epoch     int     // how many times the pace began anew before it
	next      int     // the same of the interval that this charge begins
	own       int     // undisturbed intervals of this epoch so far, this one included
	level, sd float64 // of their logarithms: the next one's median and standard deviation; own > 0
	usual     float64 // the level, or the median of all intervals while there is none; 0 before the second interval
}

// low and high are the ends of the 90 % band.
func (p interval) low() float64  { return math.Exp(p.level - p.few(z95)*p.sd) }
func (p interval) high() float64 { return math.Exp(p.level + p.few(z95)*p.sd) }

// few widens a normal quantile to that of Student's t, to the first order, for
// a scatter that is itself known from few.
func (p interval) few(z float64) float64 {
	return z * (1 + (z*z+1)/4/(strayWeight+float64(p.own)))
}

// banded tells whether the next interval can be held against this smelt's own band: there are enough of them, of the same air.
func (p interval) banded() bool { return p.own >= fewestOwn && p.next == p.epoch }

// late is after how long the next charge is overdue: well outside of what this
// smelt does, and half as long again as usual at the least.
func (p interval) late() float64 {
	return p.usual * max(1.5, math.Exp(p.few(z99)*p.sd))
}

// pacing is what the pace of the next charge goes by, from those before it.
type pacing struct {
	begins    []time.Duration // from when on the pace is another one: a lasting change of the air, another tuyere, the first ore
	reference fold.Blast      // the air that it is held against
	ore       bool
	logs      []float64 // of the undisturbed intervals of the epoch
	worked    []worked  // of its last ones, those that were seen to as well
	all       []float64 // minutes of every interval but top-ups and doubles
}

// worked is the logarithm of an interval, and whether it was undisturbed.
type worked struct {
	log   float64
	clean bool
}

// tells are the logarithms that say what is usual: of the undisturbed intervals, but where fewer than half of the last ones
// are, of all. A burden that hangs is poked because it is slow, so that what is left undisturbed is only what was quick.
func (p *pacing) tells() []float64 {
	clean := 0
	var all []float64
	for _, w := range p.worked {
		all = append(all, w.log)
		if w.clean {
			clean++
		}
	}
	if len(all) >= fewestOwn && 2*clean < len(all) {
		return all
	}
	return p.logs
}

func (p pacing) clone() pacing {
	p.begins, p.logs, p.all = slices.Clip(p.begins), slices.Clip(p.logs), slices.Clip(p.all)
	p.worked = slices.Clip(p.worked)
	return p
}

// take lets a line happen; the timeline has it already.
func (p *pacing) take(c *fold.Timeline, l fold.Line) {
	switch ev := l.Event.(type) {
	case entry.Blast:
		b := c.Blast[len(c.Blast)-1]
		if !b.Off && otherBlast(p.reference, b) {
			p.reference = b
			p.begins = append(p.begins, l.At)
		}
	case entry.Tuyere:
		p.begins = append(p.begins, l.At)
	case entry.Charge:
		if !p.ore && ev.Parts.Holds(entry.Ore) {
			p.ore = true
			p.begins = append(p.begins, l.At)
		}
	}
}

// pace gives that at a charge, the next one after those that have it.
func (m *moment) pace(i int) interval {
	var p interval
	c, by := m.c, &m.pacing
	ch := c.Charges[i]
	p.next = epochOf(by.begins, ch.At)
	if i == 0 {
		return p
	}
	before, took := m.paces.All()[i-1], c.Pace.Intervals()[i-1]
	p.epoch = before.next
	if p.epoch != before.epoch {
		by.logs, by.worked = nil, nil
	}
	p.minutes = took.Length().Minutes()
	p.clean = !took.TopUp && !took.Stopped() && usualSize(c, i) && undisturbed(c, c.Charges[i-1], ch) &&
		(before.usual == 0 || p.minutes < missing*before.usual)
	if p.clean {
		by.logs = append(by.logs, math.Log(p.minutes))
		by.logs = by.logs[max(0, len(by.logs)-recent):]
	}
	if !took.TopUp && !took.Stopped() && p.minutes > 0 && usualSize(c, i) {
		by.worked = append(by.worked, worked{math.Log(p.minutes), p.clean})
		by.worked = by.worked[max(0, len(by.worked)-recent):]
	}
	if !took.TopUp && !took.Double {
		by.all = append(by.all, took.Burning().Minutes())
	}
	logs := by.tells()
	p.own, p.level, p.sd = len(logs), median(logs), stray(logs)
	switch {
	case p.own >= fewestOwn:
		p.usual = math.Round(math.Exp(p.level)*perMinute) / perMinute
	case len(by.all) >= 2:
		p.usual = median(by.all)
	}
	return p
}

// fewestOwn is how many undisturbed intervals make a pace.
const fewestOwn = 3

// epochOf is how many epochs had begun by a moment.
func epochOf(begins []time.Duration, at time.Duration) int {
	n := 0
	for n < len(begins) && begins[n] <= at {
		n++
	}
	return n
}

// otherBlast tells whether a blast is another one than before: by its volume,
// or by what else was noted of it: a mark on another blower is another. "Set by ear" is
// always another.
func otherBlast(a, b fold.Blast) bool {
	if a.Volume.Known && b.Volume.Known {
		return differ(float64(a.Volume.Value), float64(b.Volume.Value))
	}
	s, t := a.Seen, b.Seen
	switch {
	case a.Blower != b.Blower:
		return true
	case t.SaysNoSetting():
		return false
	case t.Strokes.Known && s.Strokes.Known:
		return differ(float64(s.Strokes.Value), float64(t.Strokes.Value))
	case t.Tuyeres.Known && s.Tuyeres.Known:
		return s.Tuyeres.Value != t.Tuyeres.Value
	case t.Gate != "" && s.Gate != "":
		return s.Gate != t.Gate
	}
	return true
}

func differ(a, b float64) bool { return !(a > 0 && b > 0 && math.Abs(math.Log(b/a)) <= lasting) }

// usualSize tells whether the charges at both ends are about as large as those
// before them, doubles left out.
func usualSize(c *fold.Timeline, i int) bool {
	like := func(a, b fold.Charge) bool {
		if a.Charcoal.Charged.Unknown || b.Charcoal.Charged.Unknown {
			return a.Measures == b.Measures
		}
		return math.Abs(math.Log(a.Charcoal.Charged.Kg/b.Charcoal.Charged.Kg)) <= odd
	}
	from, to := c.Charges[i-1], c.Charges[i]
	return !from.Double && !to.Double && like(from, to)
}

// undisturbed tells whether nothing but burning happened between two charges,
// both brought to the mark and taken down at once.
func undisturbed(c *fold.Timeline, from, to fold.Charge) bool {
	if from.Remark == entry.NotToMark || from.Remark == entry.Heaped || to.Remark == entry.NotToMark || to.Remark == entry.Heaped {
		return false
	}
	first := sort.Search(c.Lines.Len(), func(i int) bool { return c.Lines.At(i).At >= from.At })
	for l := range c.Lines.From(first) {
		if l.At > to.At {
			break
		}
		inside := l.At > from.At && l.At < to.At
		if inside && entry.TraitsOf(l.Event).Pace == entry.Yes {
			return false
		}
		switch ev := l.Event.(type) {
		case entry.Charge:
			if l.Late() || l.Uncertain >= unsure {
				return false
			}
		case entry.Blast:
			if inside && !same(c, l.At, ev) {
				return false
			}
		}
	}
	return !c.Pace.Paused(from.At)
}

// unsure is from how wide a doubt about its time an entry says nothing of the
// pace.
const unsure = 2 * time.Minute

// same tells whether a blast entry only reads again what blew before.
func same(c *fold.Timeline, at time.Duration, ev entry.Blast) bool {
	before, ok := c.BlastAt(at - 1)
	now, _ := c.BlastAt(at)
	return ok && before.Off == now.Off && !ev.Off() && !otherBlast(before, now)
}

func median(vs []float64) float64 {
	if len(vs) == 0 {
		return 0
	}
	s := slices.Sorted(slices.Values(vs))
	return (s[(len(s)-1)/2] + s[len(s)/2]) / 2
}

// stray is how far the next log interval strays from the median of those so
// far, as a standard deviation: its own scatter, and that of the median, whose
// variance is half pi over the number of them for a normal one.
func stray(logs []float64) float64 {
	n := float64(len(logs))
	if n == 0 {
		return 0
	}
	sum, level := strayWeight*strayOthers, median(logs)
	for _, y := range logs {
		sum += math.Abs(y - level)
	}
	return max(strayLeast, sdOfMean*sum/(strayWeight+n)) * math.Sqrt(1+math.Pi/2/n)
}
