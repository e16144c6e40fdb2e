package rule

import (
	"time"

	"chargehand/model/entry"
	"chargehand/model/fold"
	"chargehand/physics"
)

const (
	// coldBelow is a temperature in the peep below which slag freezes; warmAbove is
	// one at which it runs again.
	coldBelow, warmAbove = physics.SlagFreezes, 1200 // °C

	// askFor is for how long the question after the top gas stands.
	askFor = 10 * time.Minute
)

// burning tells whether there is charcoal in the shaft that should burn.
func (m *moment) burning() bool { return m.phase == entry.Filling || m.charging() }

// blastLost: no blast on a hot shaft. A stop of the work with the blast on is
// none.
func blastLost(m *moment) (Evidence, bool) {
	if !m.burning() {
		return nil, false
	}
	if m.off() {
		b, _ := m.blast()
		return Evidence{minutes("off", m.at-b.At)}, true
	}
	if m.silent() {
		return Evidence{minutes("off", m.at-m.sound.at)}, true
	}
	return nil, false
}

// silent tells whether somebody heard no blast, and nothing was set since.
func (m *moment) silent() bool {
	b, ok := m.blast()
	return m.stands(m.sound, never, entry.SoundSilent) && (!ok || b.At <= m.sound.at)
}

func blastBack(m *moment, _ Warning) bool { return !m.burning() || !m.off() && !m.silent() }

// tuyereBlocked: no glow in the peep. The rod is the remedy; whether it helped
// is for the next look to say.
func tuyereBlocked(m *moment) (Evidence, bool) {
	return m.sign(m.burning() && m.stands(m.peep, m.rod, entry.PeepDark), m.peep)
}

// tuyereDim: less glow than there was, or less blast to be heard.
func tuyereDim(m *moment) (Evidence, bool) {
	if _, blocked := tuyereBlocked(m); blocked || !m.burning() {
		return nil, false
	}
	where, seen := entry.AtPeep, m.peep
	stands := m.stands(m.peep, m.rod, entry.PeepDim)
	if !stands {
		where, seen = entry.AtSound, m.sound
		stands = m.stands(m.sound, max(m.rod, m.blastSet), entry.SoundWeak)
	}
	e, ok := m.sign(stands, seen)
	return append(e, word("where", string(where))), ok
}

// slagAt: slag to be seen at the tuyere. Letting it out is the remedy.
func slagAt(m *moment) (Evidence, bool) {
	return m.sign(m.charging() && m.stands(m.slag, m.tap, entry.SlagAtTuyere), m.slag)
}

// slagNear: a gurgle is slag at the height of the tuyere.
func slagNear(m *moment) (Evidence, bool) {
	if _, seen := slagAt(m); seen {
		return nil, false
	}
	return m.sign(m.charging() && m.stands(m.sound, m.tap, entry.SoundGurgle), m.sound)
}

func slagThick(m *moment) (Evidence, bool) {
	return m.sign(m.charging() && m.standsFor(slagStands, m.slag, never, entry.SlagStiff), m.slag)
}

// seenStiff is that somebody saw the slag stiff.
func seenStiff(m *moment) bool {
	_, stiff := slagThick(m)
	return stiff
}

// carbonHigh: slag that has lost its iron, or iron that runs. Only a sign: the
// bloom is known when it is out.
func carbonHigh(m *moment) (Evidence, bool) {
	return m.sign(m.charging() && m.stands(m.slag, never, entry.SlagGlassy, entry.SlagSparks), m.slag)
}

// sign is a sight as evidence.
func (m *moment) sign(stands bool, s sight) (Evidence, bool) {
	if !stands {
		return nil, false
	}
	return Evidence{word("seen", s.word), minutes("ago", m.at-s.at)}, true
}

// hearthCold: with ore in the shaft, the fire before the tuyere is too cold for
// slag to run.
func hearthCold(m *moment) (Evidence, bool) {
	if !m.charging() || m.firstOre == never || m.early() {
		return nil, false
	}
	return m.cold()
}

// cold is that somebody read or saw the fire before the tuyere too cold for slag to
// run.
func (m *moment) cold() (Evidence, bool) {
	if m.readLast() {
		if !m.within(m.fireAt, stale) || m.fire.Value >= coldBelow {
			return nil, false
		}
		return Evidence{number("fire", float64(m.fire.Value), Degrees), number("least", coldBelow, Degrees)}, true
	}
	return m.sign(m.stands(m.peep, never, entry.PeepOrange, entry.PeepRed), m.peep)
}

// dropsBy is the charge with ore by which molten drops pass the peep of a hearth that
// is hot enough (Rockbridge recipe).
const dropsBy = 3

// early tells whether the ore has only begun, or is about to, over a hearth that is
// still warming: it has not cooled by what the solver sees, if it sees anything.
func (m *moment) early() bool {
	ore := 0
	for i := 0; i < m.charges && ore < dropsBy; i++ {
		if m.c.Charges[i].HasOre {
			ore++
		}
	}
	if ore >= dropsBy || m.lastOre || m.phase == entry.OreOff {
		return false
	}
	if ore == 0 && !fold.Planned(m.recipe, m.done).Holds(entry.Ore) {
		return false
	}
	return m.trend(hearthOf) != falling
}

// oreEarly: ore goes in, or is in the next charge, while the hearth is still warming
// and somebody saw or read that it is not hot yet. By the clock alone, or by the model
// alone, no ore is held.
func oreEarly(m *moment) (Evidence, bool) {
	if !m.charging() || !m.early() {
		return nil, false
	}
	return m.cold()
}

// readLast tells whether the fire was last read and not looked at. A dim or
// dark peep says nothing of its heat.
func (m *moment) readLast() bool {
	return m.fire.Known && (m.fireAt >= m.peep.at || m.peep.word == entry.PeepDim || m.peep.word == entry.PeepDark)
}

func hearthWarm(m *moment, _ Warning) bool {
	if !m.charging() {
		return true
	}
	if m.readLast() {
		return m.fire.Value >= warmAbove || !m.within(m.fireAt, stale)
	}
	_, cold := hearthCold(m)
	return !cold
}

// topGasUnlit: somebody saw that the gas at the top does not burn.
func topGasUnlit(m *moment) (Evidence, bool) {
	if !m.burning() {
		return nil, false
	}
	if m.topGas.at >= m.flame.at {
		return m.sign(m.stands(m.topGas, never, entry.TopGasOut), m.topGas)
	}
	return m.sign(m.stands(m.flame, never, entry.FlameNone), m.flame)
}

// topGasQuestion: a fill snuffs the top and a stopped blast lets it go out;
// nobody has said since whether it burns.
func topGasQuestion(m *moment) (Evidence, bool) {
	since := max(m.fill, m.blastOn)
	if !m.burning() || m.off() || !m.within(since, askFor) || max(m.topGas.at, m.flame.at) >= since {
		return nil, false
	}
	return Evidence{minutes("since", m.at-since)}, true
}
