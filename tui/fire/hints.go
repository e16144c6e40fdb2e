package fire

import (
	"slices"

	"chargehand/model/entry"
	"chargehand/model/figure"
	"chargehand/tui/draw"
	"chargehand/tui/scene"
	"chargehand/tui/screen"
	"chargehand/tui/words"
)

// Hints are the keys that make sense in this phase, the weightiest first, in
// words short enough that most of them fit. What answers a warning comes first.
func (f Screen) Hints(sh *screen.Shared) []draw.KeyHint {
	hints := warningHints(sh.Smelt)
	for _, h := range phaseHints(sh) {
		if !slices.Contains(hints, h) {
			hints = append(hints, h)
		}
	}
	if f.far { // the way back among the first, or a small window has no room for it
		hints = slices.Insert(hints, min(2, len(hints)), screen.Short(screen.Global.Far, words.ShortNear))
	}
	return hints
}

func phaseHints(sh *screen.Shared) []draw.KeyHint {
	s, k := sh.Smelt, Map
	if screen.RightsIn(s) == screen.LookOnly {
		return []draw.KeyHint{screen.Short(screen.Global.Views, words.ShortViews), screen.Hint(screen.Global.Far), screen.Hint(screen.Global.Back), scene.ChemistryHint(sh)}
	}
	if screen.RightsIn(s) < screen.Own {
		return []draw.KeyHint{screen.Short(k.Weigh, words.DoWeigh), screen.Short(k.Note, words.DoNote), screen.Short(k.Rare, words.ShortOthers), screen.Short(screen.Global.Views, words.ShortViews), screen.Hint(screen.Global.Back), scene.ChemistryHint(sh)}
	}
	crossOut, look, blast := screen.Short(k.CrossOut, words.ShortCrossOut), screen.Short(k.Look, words.DoLook), screen.Short(k.Blast, words.DoBlast)
	more, screens := screen.Short(k.Rare, words.ShortOthers), screen.Short(screen.Global.Views, words.ShortViews)
	note, tap := screen.Short(k.Note, words.DoNote), screen.Short(k.Tap, words.DoTap)
	switch p := s.Phase(); {
	case filling(p):
		return []draw.KeyHint{screen.Short(k.Charcoal, words.DoFill), screen.Short(k.Charge, words.ShortCharge), blast, crossOut, more, screens, look, note, scene.ChemistryHint(sh)}
	case p.Over():
		return []draw.KeyHint{screen.Short(k.Weigh, words.DoWeigh), note, crossOut, more, screens}
	case p == entry.BurnsDown:
		out, dip := screen.Short(k.Rare, words.ShortBloomOut), screen.Short(k.Dip, words.DoDip)
		if r := s.Reading(); (r.At - r.Since).Minutes() < figure.BurnDownLeast {
			return []draw.KeyHint{dip, look, tap, out, blast, crossOut, screens, note, scene.ChemistryHint(sh)}
		}
		return []draw.KeyHint{out, dip, look, tap, blast, crossOut, screens, note, scene.ChemistryHint(sh)}
	}
	return []draw.KeyHint{
		screen.Short(k.Charge, words.ShortCharge), screen.Short(k.Scoop, words.ShortScoop), crossOut, blast, tap, more, screens,
		screen.Short(k.Charcoal, words.ShortCharcoal), look, screen.Short(k.Rod, words.ShortRod), screen.Short(k.Half, words.DoHalf), screen.Short(k.Earlier, words.ShortEarlier),
		screen.Short(k.NotToMark, words.ShortNotToMark), note, screen.Short(k.Poke, words.ShortPoke), screen.Short(k.Dip, words.DoDip), screen.Short(k.Weigh, words.DoWeigh),
		screen.Short(screen.Global.Far, words.ShortFar), scene.ChemistryHint(sh),
	}
}
