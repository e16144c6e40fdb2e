package fire_test

import (
	"math"
	"strings"
	"testing"
	"time"

	tea "github.com/charmbracelet/bubbletea"

	"chargehand/model/figure"
	"chargehand/tui/desk"
	"chargehand/tui/fire"
	"chargehand/tui/theme"
)

// closed ends an invented smelt: the bloom is taken out through the arch, or there
// is none.
func closed(d *desk.Desk, how ...string) {
	d.Press("o", "l", "o", "b")
	d.Pass(30 * time.Minute)
	d.Press("o", "o")
	d.Press(how...)
	d.Pass(10 * time.Minute)
	d.Press("o", "k", "y", "enter")
	d.Wait(2 * time.Second)
}

// Said once that the bloom will not be weighed, nothing asks for its weight any more.
func TestWhatWillNotBeWeighedIsNotAskedFor(t *testing.T) {
	d := desk.Smelting(t, theme.Theme{})
	closed(d, "r")
	d.Shows("weigh the bloom")
	d.Press("w", "n", "b", "w", "n", "g")
	d.Wait(2 * time.Second)
	d.Shows("bloom     not known: not weighed")
	for _, view := range [][]string{nil, {"v", "s"}, {"v", "a"}} {
		d.Press(view...)
		for _, asks := range []string{"weigh the bloom", "weigh it", "is not weighed"} {
			if strings.Contains(d.Picture(), asks) {
				t.Errorf("%v still asks: %q\n%s", view, asks, d.Picture())
			}
		}
	}
}

func weighed(d *desk.Desk, kg string) {
	d.Press("w", "b")
	d.Write(kg)
	d.Press("enter", "n")
	d.Wait(2 * time.Second)
}

// Once a smelt is closed the fire shows what it gave, each figure with its base,
// and what was foretold just before the bloom was taken out; and of what is not
// known what to weigh.
func TestTheResultIsShownAfterClosing(t *testing.T) {
	d := desk.Smelting(t, theme.Theme{})
	closed(d, "r")
	for _, says := range []string{"the result", "bloom     not known: weigh the bloom", "kg, weigh it"} {
		d.Shows(says)
	}
	weighed(d, "4.1")
	o, ok := d.M.Running().Outcome()
	if !ok {
		t.Fatal("a closed smelt has no result")
	}
	r := d.M.Running().Reading()
	if y, known := o.Yield(); !known || math.Abs(y*r.Figure(figure.OreDry).P50-4.1) > 1e-9 {
		t.Errorf("yield %g, known %v", y, known)
	}
	if c, known := o.CharcoalPerBloom(); !known || math.Abs(c*4.1-r.Figure(figure.CharcoalCharged).P50) > 1e-9 {
		t.Errorf("charcoal %g, known %v", c, known)
	}
	if last, _ := d.M.Running().Last(); last.At-o.Lasted < 10*time.Minute {
		t.Errorf("the hours end at %v, not when the bloom was out, ten minutes before %v", o.Lasted, last.At)
	}
	for _, says := range []string{"4.1 kg, hot or cold not said", "% of the ore, dry", "kg dry per kg of bloom", "from light until taken out", "kg, so it came"} {
		d.Shows(says)
	}
	weighed(d, "0.5")
	d.Shows("kg, came less")
	before := o.Foretold
	d.Press("w", "m", "a", "3", "enter", "w")
	d.Wait(2 * time.Second)
	if o, _ = d.M.Running().Outcome(); o.Foretold != before {
		t.Errorf("what was foretold before the bloom was out changed from %v to %v by what was weighed later", before, o.Foretold)
	}
}

// Slag that was weighed as it was tapped is told in the result until the rest is weighed, and
// with it afterwards, but not twice.
func TestTappedSlagIsInTheResult(t *testing.T) {
	d := desk.Smelting(t, theme.Theme{})
	d.Press("t")
	d.Wait(2 * time.Second)
	d.Press("v", "b", "a", "w")
	d.Write("1.4")
	d.Press("enter", "v", "f")
	closed(d, "r")
	d.Shows("1.4 kg tapped; weigh the rest")
	d.Press("w", "g", "5", "enter", "k")
	d.Wait(2 * time.Second)
	d.Shows("6.4 kg weighed")
	d.Press("w", "g", "1", ".", "5", "enter", "p")
	d.Wait(2 * time.Second)
	d.Shows("6.5 kg weighed")
}

// A smelt without a bloom is told as one, and nothing of it is asked to be weighed.
func TestTheResultOfNoBloom(t *testing.T) {
	d := desk.Smelting(t, theme.Theme{})
	closed(d, "n", "y")
	d.Shows("none, no compact bloom")
	d.Shows("kg, but none")
	if strings.Contains(d.Picture(), "weigh the bloom") {
		t.Error("a bloom that never was is to be weighed")
	}
}

// The card is whole in a small window: nothing in it is cut.
func TestTheResultFitsASmallWindow(t *testing.T) {
	for _, kg := range []string{"", "4.1", "0.5"} {
		d := desk.Smelting(t, theme.Theme{})
		d.Send(tea.WindowSizeMsg{Width: 80, Height: 24})
		closed(d, "r")
		if kg != "" {
			weighed(d, kg)
		}
		rows := strings.Split(d.Picture(), "\n")
		for _, row := range rows[2:13] {
			if _, card, _ := strings.Cut(row, "│"); strings.Contains(card, "…") {
				t.Errorf("%s: cut: %s", kg, card)
			}
		}
		d.Shows("or none:")
	}
}

// Far away the result comes first: the bloom in letters, or that there is none, or that it
// is to be weighed; below it all that the card says, in full where there is the room.
func TestTheResultIsReadFromAfar(t *testing.T) {
	for _, c := range []struct {
		how  []string
		kg   string
		says string
	}{{[]string{"r"}, "", "weigh it"}, {[]string{"r"}, "4.1", "4.1 kg"}, {[]string{"n", "y"}, "", "no bloom"}} {
		d := desk.Smelting(t, theme.Theme{})
		closed(d, c.how...)
		if c.kg != "" {
			weighed(d, c.kg)
		}
		d.Press("space")
		for _, size := range [][2]int{{40, 12}, desk.Small, desk.Usual, desk.Large} {
			d.Send(tea.WindowSizeMsg{Width: size[0], Height: size[1]})
			if !fire.Lettered(d.Picture(), c.says) {
				t.Errorf("%v: no %q in letters:\n%s", size, c.says, d.Picture())
			}
			if size == [2]int{40, 12} {
				continue
			}
			for _, says := range []string{"the result", "yield", "charcoal", "foretold", "from light until taken out", "or none: "} {
				d.Shows(says)
			}
			if strings.Contains(d.Picture(), "…") {
				t.Errorf("%v: cut:\n%s", size, d.Picture())
			}
		}
		d.Press("o") // what is asked is read from there too
		d.Shows("other acts")
	}
}
