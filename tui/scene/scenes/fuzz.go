package scenes

import (
	"strings"
	"testing"

	"github.com/charmbracelet/x/ansi"

	"chargehand/model/entry"
	"chargehand/model/rule"
	"chargehand/tui/draw"
	"chargehand/tui/theme"
)

// Fuzz tries a picture with whatever people name their things: every frame keeps
// its size and passes no control character on.
func Fuzz(f *testing.F, paint Painter) {
	f.Add("Reed Hollow", "bucket", "a note", uint8(80), uint8(24))
	f.Add("a\x1b[2J\x00\r\n", "鉄鉄鉄鉄鉄鉄鉄鉄鉄鉄鉄", "e\u0301\u202e👩‍🔧\t", uint8(41), uint8(13))
	f.Fuzz(func(t *testing.T, furnace, measure, note string, w, h uint8) {
		r := MidSmelt()
		r.Light.Furnace.Name, r.By, r.Blast = furnace, note, entry.Blast{Gate: measure}
		r.Measures[0].Name, r.Next[1].Measure = measure, measure
		v := ViewOf(r)
		v.Title, v.Log[0].Text, v.Past = furnace, note, measure
		v.Warnings = []rule.Warning{{Rule: rule.TuyereDim, Grade: rule.Act, Evidence: rule.Evidence{{Name: "seen", Word: note}}}, {Rule: rule.ID(note)}}
		s := Scene{Answer: draw.Answer{Text: note}}
		if w%2 == 0 {
			s.Ask = &draw.Ask{Label: measure, Value: func(int) string { return note }, Hint: furnace}
		}
		w, h = max(w, 1), max(h, 1)
		v.Ending.Flame, v.Ending.Closer = &draw.Sight{Sees: note}, furnace
		if h%2 == 0 {
			v.Warnings, v.Caution = nil, &draw.CautionText{Title: note, Fact: furnace, Care: measure, Local: note}
		}
		if w%3 == 0 {
			r.Phase = entry.BurnsDown
		}
		s.R, s.V = r, v
		th := theme.Theme{ASCII: h%3 == 0}
		for y, row := range strings.Split(ansi.Strip(s.Frame(th, int(w), int(h), paint)), "\n") {
			if n := ansi.StringWidth(row); n != int(w) {
				t.Fatalf("%dx%d row %d: width %d: %q", w, h, y, n, row)
			}
			for _, c := range row {
				if c < ' ' || c == 0x7f {
					t.Fatalf("control character %q in %q", c, row)
				}
			}
		}
	})
}
