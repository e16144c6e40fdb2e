package fire

import (
	"github.com/charmbracelet/bubbles/key"

	"chargehand/tui/scene"
	"chargehand/tui/screen"
	"chargehand/tui/words"
)

// Keys are the keys at the fire. The charge keys c, s, d and f lie together
// under the left hand; what crosses out, and the list that changes phase, lie
// far from them on every layout (keyboard_test.go holds the tables). The number
// pad doubles the frequent acts: the widest keys, 0 and +, charge. Enter does
// nothing here, since it also ends every field.
type Keys struct {
	Charge, Scoop, Half, Charcoal                      key.Binding
	CrossOut, Earlier, NotToMark, Heaped               key.Binding
	Blast, Tap, Rod, Look, Poke, Dip                   key.Binding
	Temperature, Weigh, Note, Pause                    key.Binding
	MoreOre, LessOre, MoreCharcoal, LessCharcoal, Rare key.Binding
	Seen, Alight, Out                                  key.Binding
	Chemistry, Hour                                    key.Binding
}

// hourKey is its letter in the list of rare acts too.
const hourKey = "q"

// Map are those keys.
var Map = Keys{
	Charge:       screen.Bind(words.DoCharge, "c", "0"),
	Scoop:        screen.Bind(words.DoScoop, "s", "+"),
	Half:         screen.Bind(words.DoHalf, "d", ".", ","),
	Charcoal:     screen.Bind(words.DoCharcoal, "f", "1"),
	CrossOut:     screen.Bind(words.DoCrossOut, "u", "7"),
	Earlier:      screen.Bind(words.DoEarlier, "m", "-"),
	NotToMark:    screen.Bind(words.DoNotToMark, "g", "*"),
	Heaped:       screen.Bind(words.DoHeaped, "j", "/"),
	Blast:        screen.Bind(words.DoBlast, "b", "2"),
	Tap:          screen.Bind(words.DoTap, "t", "3"),
	Rod:          screen.Bind(words.DoRod, "r", "4"),
	Look:         screen.Bind(words.DoLook, "l"),
	Poke:         screen.Bind(words.DoPoke, "p", "5"),
	Dip:          screen.Bind(words.DoDip, "i", "6"),
	Temperature:  screen.Bind(words.DoTemperature, "e", "8"),
	Weigh:        screen.Bind(words.DoWeigh, "w", "9"),
	Note:         screen.Bind(words.DoNote, "n"),
	Pause:        screen.Bind(words.DoPause, "k"),
	MoreOre:      screen.Bind(words.DoMoreOre, "up"),
	LessOre:      screen.Bind(words.DoLessOre, "down"),
	MoreCharcoal: screen.Bind(words.DoMoreCharcoal, "right"),
	LessCharcoal: screen.Bind(words.DoLessCharcoal, "left"),
	Rare:         screen.Bind(words.DoOthers, "o"),
	Seen:         screen.Bind(words.DoSeen, "a"),
	Alight:       screen.Bind(words.DoAlight, "y"),
	Out:          screen.Bind(words.DoOut, "x"),
	Chemistry:    scene.ChemistryKey,
	Hour:         screen.Bind(words.DoHour, hourKey),
}

// FromAfar are the acts that are keyed from the screens beside the fire too. These give
// their letters to nothing else.
var FromAfar = []key.Binding{Map.Charge, Map.Scoop, Map.Half, Map.Charcoal, Map.Blast, Map.Tap, Map.Rod, Map.CrossOut}

// All of them, the weightiest first.
func (f Keys) All() []key.Binding {
	return []key.Binding{
		f.Charge, f.Scoop, f.Charcoal, f.Half, f.CrossOut, f.Blast, f.Tap, f.Rod, f.Look, f.Earlier, f.NotToMark, f.Rare,
		f.Poke, f.Dip, f.Temperature, f.Weigh, f.Note, f.Heaped, f.Pause,
		f.MoreOre, f.LessOre, f.MoreCharcoal, f.LessCharcoal, f.Seen, f.Alight, f.Out, f.Chemistry, f.Hour,
	}
}

// Repeating are scoops, minutes and arrows they may come as fast as a hand can.
func (f Keys) Repeating() []key.Binding {
	return []key.Binding{f.Scoop, f.Half, f.Earlier, f.MoreOre, f.LessOre, f.MoreCharcoal, f.LessCharcoal}
}
