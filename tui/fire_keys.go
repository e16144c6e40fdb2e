package tui

import (
	"github.com/charmbracelet/bubbles/key"

	"chargehand/model/words"
)

// fireKeys are the keys at the fire. The charge keys c, s, d and f lie together
// under the left hand; what crosses out, and the list that changes phase, lie
// far from them on every layout (keyboard_test.go holds the tables). The number
// pad doubles the frequent acts: the widest keys, 0 and +, charge. Enter on its
// own opens a list and books nothing, since it also ends every field.
type fireKeys struct {
	Charge, Scoop, Half, Charcoal                      key.Binding
	CrossOut, Earlier, NotToMark, Heaped               key.Binding
	Blast, Tap, Rod, Look, Poke, Dip                   key.Binding
	Temperature, Weigh, Note, Pause                    key.Binding
	MoreOre, LessOre, MoreCharcoal, LessCharcoal, Rare key.Binding
	Seen, Alight, Out                                  key.Binding
	Chemistry                                          key.Binding
}

var fireMap = fireKeys{
	Charge:       bind(words.DoCharge, "c", "0"),
	Scoop:        bind(words.DoScoop, "s", "+"),
	Half:         bind(words.DoHalf, "d", ".", ","),
	Charcoal:     bind(words.DoCharcoal, "f", "1"),
	CrossOut:     bind(words.DoCrossOut, "u", "7"),
	Earlier:      bind(words.DoEarlier, "m", "-"),
	NotToMark:    bind(words.DoNotToMark, "g", "*"),
	Heaped:       bind(words.DoHeaped, "j", "/"),
	Blast:        bind(words.DoBlast, "b", "2"),
	Tap:          bind(words.DoTap, "t", "3"),
	Rod:          bind(words.DoRod, "r", "4"),
	Look:         bind(words.DoLook, "l", "enter"),
	Poke:         bind(words.DoPoke, "p", "5"),
	Dip:          bind(words.DoDip, "i", "6"),
	Temperature:  bind(words.DoTemperature, "e", "8"),
	Weigh:        bind(words.DoWeigh, "w", "9"),
	Note:         bind(words.DoNote, "n"),
	Pause:        bind(words.DoPause, "k"),
	MoreOre:      bind(words.DoMoreOre, "up"),
	LessOre:      bind(words.DoLessOre, "down"),
	MoreCharcoal: bind(words.DoMoreCharcoal, "right"),
	LessCharcoal: bind(words.DoLessCharcoal, "left"),
	Rare:         bind(words.DoOthers, "o"),
	Seen:         bind(words.DoSeen, "a"),
	Alight:       bind(words.DoAlight, "y"),
	Out:          bind(words.DoOut, "x"),
	Chemistry:    bind(words.DoChemistry, "tab"),
}

func (f fireKeys) all() []key.Binding {
	return []key.Binding{
		f.Charge, f.Scoop, f.Charcoal, f.Half, f.CrossOut, f.Blast, f.Tap, f.Rod, f.Look, f.Earlier, f.NotToMark, f.Rare,
		f.Poke, f.Dip, f.Temperature, f.Weigh, f.Note, f.Heaped, f.Pause,
		f.MoreOre, f.LessOre, f.MoreCharcoal, f.LessCharcoal, f.Seen, f.Alight, f.Out, f.Chemistry,
	}
}

// repeating: scoops, minutes and arrows may come as fast as a hand can.
func (f fireKeys) repeating() []key.Binding {
	return []key.Binding{f.Scoop, f.Half, f.Earlier, f.MoreOre, f.LessOre, f.MoreCharcoal, f.LessCharcoal}
}
