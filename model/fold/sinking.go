package fold

import (
	"math"
	"time"

	"chargehand/model/entry"
	"chargehand/physics"
)

// sinking is how far the burden has sunk since somebody last said where it stands, at the pace of the last charges.
type sinking struct {
	from physics.Level // as it was believed then
	top  float64       // m, where the last charge left it, the mark at the most
	room float64       // m that a charge takes up: the larger of the last two
	last float64       // m that the last one took up, all goes of it
	fell float64       // m since, at the pace of the last charges
	sd   float64       // m, what the error of that pace makes of it

	laid   physics.Level // as the last charge left it
	before float64       // m from then to from, at the pace of the last charges
	usual  [2]likelyPace // where the pace of this interval lies by those before it; the second one may have no weight
	found  likelyPace    // where a dip since the last charge has it; no weight without one
}

// likelyPace is a pace about which the true one lies, over that of the last charges, with the scale of that and its weight.
type likelyPace struct{ at, scale, weight float64 }

// charged notes how much a charge took up, in m; another go of the last one adds to that.
func (g *sinking) charged(thick float64, goes bool) {
	if goes {
		g.last += thick
		g.room = max(g.room, g.last)
		return
	}
	g.room, g.last = max(thick, g.last), thick
}

// begin notes where the burden stands.
func (g *sinking) begin(l physics.Level) {
	g.before += g.fell
	g.from, g.fell, g.sd = l, 0, 0
}

// interval begins the one after a charge that left the burden there. Last and earlier are the paces of the last interval and of
// those before it, over that of all of them. Where the last one was far slower, nobody knows yet whether it goes on so or was
// one charge that hung or was not keyed.
func (g *sinking) interval(l physics.Level, last, earlier float64) {
	g.laid, g.before, g.fell, g.sd = l, 0, 0, 0
	g.usual, g.found = [2]likelyPace{{1, 1, 1}}, likelyPace{}
	if last > 0 && earlier > slowed*last {
		g.usual = [2]likelyPace{{last, last, 0.5}, {earlier, earlier, 0.5}}
	}
}

// slowed is by how many times an interval is longer than those before it that was slowed by something (assumed).
const slowed = 1.5

// dip takes a dip at a height: that it sinks slower since the last charge holds until the next, or until something is done about
// it.
func (g *sinking) dip(height float64) {
	fell := g.before + g.fell
	if !g.sinks() || fell <= 0 {
		return
	}
	off := math.Hypot(g.laid.SD(), physics.DipSD)
	p := g.summed(g.usual[:], slower, func(pace float64) float64 {
		z := (g.laid.Height - pace*fell - height) / off
		return math.Exp(-z * z / 2)
	})
	wide := (p.quantile(0.9) - p.quantile(0.1)) / 2 / tailsZ90
	if at := p.quantile(0.5); at < 1 { // what is found low fell at once
		g.found = likelyPace{at, max(at, wide/g.scale(), paceAt(5)), 1}
	}
}

// done forgets what a dip said of the pace: the fire was seen to.
func (g *sinking) done() { g.found = likelyPace{} }

const (
	// paceScale is the spread of a pace about that of the three intervals before it, as a share of steadyRel. It has the tails of
	// a Student's t of three degrees of freedom: of 58 intervals of the published logs of testdata a quarter lies 0.13 off
	// on each side, a tenth 0.2 slower or 0.4 faster, a fiftieth 0.46 slower (TestThePaceHasTails).
	paceScale = 0.13 / steadyRel
	// slower is the chance of an interval that is slower by anything: less air gets in, the burden hangs, or a charge was not
	// keyed (assumed: one interval in twenty; of those 58 one was 0.46 slower).
	slower = 0.05
	// unminded is the chance that nobody charges though there is room for it (assumed: people do not let a shaft run empty), and
	// dippedUnminded the same of people who have dipped since the last charge.
	unminded, dippedUnminded = 0.01, 0.001
	// fastest is by how many times the usual pace the burden can sink.
	fastest = 3.0
)

// waited is the level where a charge is waited for that has not come. People charge when there is room for a charge: the longer
// none comes, the less the burden can have sunk, whatever the cause, from a weak blast to one that hangs or a charge that nobody
// keyed. Of all paces each counts as far as it lets nobody have charged yet.
func (g sinking) waited() physics.Level {
	if !g.sinks() {
		return g.plain()
	}
	p := g.paces(func(over float64) float64 { return math.Erfc(over/math.Sqrt2) / 2 })
	l := g.from
	l.Height = max(0, l.Height-p.quantile(0.5)*g.fell)
	l.Drift += (p.quantile(0.9) - p.quantile(0.1)) / 2 / physics.Z90 * g.fell
	return l
}

// came is the level as a charge comes: there was room for it, and not long since. What is then seen of the level makes it surer,
// so that the spread stays that of the pace.
func (g sinking) came() physics.Level {
	if !g.sinks() {
		return g.plain()
	}
	p := g.paces(func(over float64) float64 { return math.Exp(-over * over / 2) })
	l := g.from
	l.Height = max(0, l.Height-p.quantile(0.5)*g.fell)
	l.Drift += paceScale * tailsZ90 / physics.Z90 * g.sd
	return l
}

// sinks tells whether there is a pace to weigh.
func (g sinking) sinks() bool { return g.fell > 0 && g.room > 0 && g.sd > 0 }

// plain is the level at the pace of the last charges.
func (g sinking) plain() physics.Level {
	l := g.from
	l.Height = max(0, l.Height-g.fell)
	l.Drift += g.sd
	return l
}

// paceSteps is how finely the paces are told apart.
const paceSteps = 150

// paces is how likely each pace is, summed up, from standing still to the fastest.
type paces [paceSteps + 1]float64

func paceAt(i int) float64 { return fastest * float64(i) / paceSteps }

// paces weighs them by how likely a charge is where there is so much more room than it takes, in standard deviations of what
// people see of that.
func (g sinking) paces(likely func(over float64) float64) paces {
	eye := math.Hypot(physics.MarkSD, g.from.SD())
	of, slow, nobody := g.usual[:], slower, unminded
	if g.found.weight > 0 {
		of, slow, nobody = []likelyPace{g.found}, 0, dippedUnminded
	}
	return g.summed(of, slow, func(pace float64) float64 {
		return nobody + (1-nobody)*likely((g.top-g.from.Height+pace*g.fell-g.room)/eye)
	})
}

// scale is that of the pace of one interval.
func (g sinking) scale() float64 { return paceScale * g.sd / g.fell }

// summed weighs the paces by where they lie and by how likely they make what is seen.
func (g sinking) summed(of []likelyPace, slow float64, likely func(pace float64) float64) (p paces) {
	scale := g.scale()
	for i := range p {
		pace, w := paceAt(i), 0.0
		for _, l := range of {
			if l.weight > 0 {
				w += (1 - slow) * l.weight * tails((pace-l.at)/(scale*l.scale)) / (tailsArea * scale * l.scale)
			}
		}
		if pace < 1 {
			w += slow
		}
		p[i] = w * likely(pace)
		if i > 0 {
			p[i] += p[i-1]
		}
	}
	return p
}

// quantile is the pace that so great a share of them does not pass.
func (p *paces) quantile(share float64) float64 {
	want := share * p[paceSteps]
	for i := range p {
		if p[i] < want {
			continue
		}
		if i == 0 {
			return 0
		}
		return paceAt(i) - fastest/paceSteps*(p[i]-want)/(p[i]-p[i-1])
	}
	return fastest
}

// tails is the density of Student's t with three degrees of freedom, but for a constant: the area under it, half pi times the
// root of three. tailsZ90 is its 90th percentile (any table).
func tails(t float64) float64 { return 1 / ((1 + t*t/3) * (1 + t*t/3)) }

const tailsArea, tailsZ90 = 2.7207, 1.638

// Awaits tells whether a charge is waited for at a moment: not in the burn-down or after it, and not in a pause.
func (s *State) Awaits(at time.Duration) bool {
	i := len(s.Turns) - 1
	for i > 0 && s.Turns[i].At > at {
		i--
	}
	if i < 0 {
		return false
	}
	switch s.Turns[i].Phase {
	case entry.BurnsDown, entry.Extracted, entry.Closed:
		return false
	}
	return !s.Pace.Paused(at)
}
