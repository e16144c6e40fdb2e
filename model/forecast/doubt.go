package forecast

import (
	"iter"
	"time"

	"chargehand/model/entry"
	"chargehand/model/fold"
)

// Doubt is a reason why a forecast may not hold: something that it cannot take
// into account happened since the last charge, or it rests on too little.
type Doubt int

// The reasons, the gravest first.
const (
	BlastOff      Doubt = iota // no air goes in
	Paused                     // the work stands still, or did since the last charge
	BlastChanged               // the blast was set otherwise since the last charge, by enough to tell or by nobody knows how much
	TuyereChanged              // the tuyere was turned, moved or swapped since then
	Tapped                     // slag was let out since then
	Poked                      // the burden was settled since then: it sank without burning
	NewLevel                   // a change of air began a new level, which rests on fewer than three intervals
	FewIntervals               // the smelt has had fewer than three intervals
	Doubts                     // how many reasons there are
)

var doubtKeys = [Doubts]string{
	"blast_off", "paused", "blast_changed", "tuyere_changed", "tapped", "poked", "new_level", "few_intervals",
}

// String is the reason's key on the wire.
func (d Doubt) String() string { return doubtKeys[d] }

// MarshalText writes the key.
func (d Doubt) MarshalText() ([]byte, error) { return []byte(d.String()), nil }

// doubtsOf are the reasons that stand at a state since a charge began.
func doubtsOf(s *fold.State, began time.Duration, p *pace) []Doubt {
	var has [Doubts]bool
	for l := range since(s, began) {
		switch l.Event.(type) {
		case entry.Pause:
			has[Paused] = true
		case entry.Tuyere:
			has[TuyereChanged] = true
		case entry.Tap:
			has[Tapped] = true
		case entry.Poke:
			has[Poked] = true
		}
	}
	if b, ok := s.BlastAt(s.At); ok && b.Off {
		has[BlastOff] = true
	}
	has[Paused] = has[Paused] || s.Paused
	has[BlastChanged] = newAir(airBy(s.Blast, began), airBy(s.Blast, s.At+1))
	few := len(p.own) < settled
	has[NewLevel] = few && p.renewed
	has[FewIntervals] = few && !p.renewed
	var ds []Doubt
	for d, held := range has {
		if held {
			ds = append(ds, Doubt(d))
		}
	}
	return ds
}

// since are the lines after that of the last charge, which began at a moment.
func since(s *fold.State, began time.Duration) iter.Seq[*fold.Line] {
	charge := uint64(0)
	for i := len(s.Charges) - 1; i >= 0 && s.Charges[i].At >= began; i-- {
		charge = s.Charges[i].Seq
	}
	i := s.Lines.Len()
	for i > 0 && s.Lines.At(i-1).Seq() != charge {
		i--
	}
	return s.Lines.From(i)
}
