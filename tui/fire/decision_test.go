package fire

import (
	"fmt"
	"strings"
	"testing"
	"time"

	"github.com/charmbracelet/x/ansi"
	"github.com/charmbracelet/x/exp/golden"

	"chargehand/model/entry"
	"chargehand/model/figure"
	"chargehand/model/rule"
	"chargehand/tui/cell"
	"chargehand/tui/draw"
	"chargehand/tui/scene"
	"chargehand/tui/scene/scenes"
	"chargehand/tui/theme"
	"chargehand/tui/words"
)

// sayings are the reasons of each way, as the decision card orders them.
func sayings(r *figure.Reading, v scene.View) (said [3]string) {
	for i, w := range penOf(theme.Theme{}).ways(r, v) {
		said[i] = strings.Join(w.reasons, "; ")
	}
	return said
}

// Each figure speaks for the way that it speaks for, and for no other.
func TestDecisionPutsFiguresWhereTheySpeak(t *testing.T) {
	down := scenes.ReadyDown()
	yellow := &draw.Sight{Sees: entry.FlameYellow, At: down.At}
	gone := scenes.ReadyDown()
	gone.Figures[figure.StackHeight] = scenes.Known(0, 2, 4, figure.Measured)
	gone.Layers = []figure.Layer{{Charge: 24, Top: 2, Ore: scenes.Exactly(0.2)}}
	early := scenes.ReadyDown()
	early.Since = early.At - 12*time.Minute
	little := scenes.ReadyDown()
	little.Figures[figure.OreCharged] = scenes.Known(4.8, 5, 5.2, figure.Measured)
	oreless := scenes.ReadyDown()
	for i := range oreless.Charges {
		oreless.Charges[i].Ore = scenes.Exactly(0)
	}
	blown := scenes.MidSmelt()
	blown.BlastOff, blown.BlastAt = true, blown.At-14*time.Minute
	cold := scene.View{Warnings: []rule.Warning{scenes.Standing(down, rule.HearthCold, rule.Evidence{{Name: "seen", Word: "red"}})}}
	for name, c := range map[string]struct {
		r    *figure.Reading
		v    scene.View
		way  int
		says string
	}{
		"long enough":   {down, scene.View{}, toExtract, words.BurnDownFor(29*time.Minute, figure.BurnDownLeast, figure.BurnDownMost)},
		"too short":     {early, scene.View{}, toWait, words.BurnDownFor(12*time.Minute, figure.BurnDownLeast, figure.BurnDownMost)},
		"not begun":     {scenes.MidSmelt(), scene.View{}, toWait, words.NotBurningDown},
		"burden stands": {down, scene.View{}, toWait, "burden 11 cm above the tuyere"},
		"burden down":   {gone, scene.View{}, toExtract, "burden 2 cm above the tuyere, measured"},
		"ore stands":    {down, scene.View{}, toWait, "ore of charge 24 still 11 cm above the tuyere, last ore 44 min ago"},
		"ore through":   {gone, scene.View{}, toExtract, words.OreAllThrough},
		"flame yellow":  {down, scene.View{Ending: draw.Ending{Flame: yellow}}, toExtract, words.FlameUsedUp},
		"flame pale":    {down, scene.View{Ending: draw.Ending{Flame: &draw.Sight{Sees: entry.FlamePale}}}, toWait, words.FlameWorks},
		"flame unseen":  {down, scene.View{}, toWait, words.FlameUnseen},
		"ore enough":    {down, scene.View{}, toExtract, "30 kg of ore is in"},
		"ore little":    {little, scene.View{}, toGiveUp, "only 5 kg of ore is in"},
		"no ore":        {oreless, scene.View{}, toGiveUp, words.NoOreForBloom},
		"blast off":     {blown, scene.View{}, toGiveUp, "blast off for 14 min"},
		"hearth cold":   {down, cold, toGiveUp, "hearth cold: peep red"},
	} {
		for way, said := range sayings(c.r, c.v) {
			if has := strings.Contains(said, c.says); has != (way == c.way) {
				t.Errorf("%s: way %d says %q; %q belongs to way %d", name, way, said, c.says, c.way)
			}
		}
	}
}

func decisionFrame(th theme.Theme, w, h int, s scenes.Scene) string {
	return s.Frame(th, w, h, func(g cell.Grid, p draw.Pen, r *figure.Reading, v scene.View) { paintDecision(g, pen{p}, r, v) })
}

// What a golden view holds was looked at as a picture before it was kept.
func TestGoldenDecision(t *testing.T) {
	for _, size := range [][2]int{{80, 24}, {120, 36}} {
		t.Run(fmt.Sprintf("decide-%dx%d-plain", size[0], size[1]), func(t *testing.T) {
			golden.RequireEqual(t, ansi.Strip(decisionFrame(theme.Theme{}, size[0], size[1], scenes.Named("decide"))))
		})
	}
	t.Run("decide-early-120x36-plain", func(t *testing.T) {
		golden.RequireEqual(t, ansi.Strip(decisionFrame(theme.Theme{}, 120, 36, scenes.Named("decide-early"))))
	})
}

// The ways stand in the same order and in the same look whatever speaks for
// them, each with its key.
func TestDecisionDecidesNothing(t *testing.T) {
	for _, s := range scenes.All() {
		if !strings.HasPrefix(s.Name, "decide") {
			continue
		}
		for _, size := range [][2]int{{40, 12}, {80, 24}, {120, 36}, {200, 60}} {
			text := ansi.Strip(decisionFrame(theme.Theme{}, size[0], size[1], s))
			at := -1
			for _, head := range []string{"(o) extract", "(w) wait", "(n) give up"} {
				i := strings.Index(text, head)
				if i <= at {
					t.Errorf("%s %v: %q stands at %d after %d:\n%s", s.Name, size, head, i, at, text)
				}
				at = i
			}
		}
	}
}
