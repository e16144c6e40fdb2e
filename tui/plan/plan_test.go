package plan_test

import (
	"math"
	"regexp"
	"strings"
	"testing"
	"time"

	tea "github.com/charmbracelet/bubbletea"
	"github.com/charmbracelet/x/exp/golden"

	"chargehand/model/entry"
	"chargehand/model/plan"
	"chargehand/tui/desk"
	"chargehand/tui/screen"
)

// ready is a desk with a furnace, ore, charcoal and their measures in the house.
func ready(t *testing.T) *desk.Desk {
	t.Helper()
	d := desk.Sit(t)
	d.KeyFurnace()
	d.KeyStores(desk.PondOre, desk.Alder("44"), desk.Bucket, desk.Scoop)
	d.Press("v", "p")
	return d
}

func TestAPlanIsKeptAndLit(t *testing.T) {
	d := ready(t)
	d.Shows("wanted: a bloom of 4 kg")
	d.Shows("too little by")
	d.Script("wb3\n")
	d.Shows("wanted: a bloom of 3 kg")
	d.Script("n4\n")
	d.Press("right", "left", "enter") // the usual way
	d.Answers("plan taken: bloom of 3 kg, usual")
	h := d.M.Shared().House()
	if len(h.Plans) != 1 {
		t.Fatalf("plans %+v\n%s", h.Plans, d.Picture())
	}
	p := h.Plans[0]
	d.Shows("l light it")
	d.Press("enter")
	d.Answers("this plan is taken: l lights it")
	if n := len(d.M.Shared().House().Plans); n != 1 {
		t.Errorf("%d plans of one taken twice", n)
	}
	if p.Taken != "usual" || len(p.Plans) != 3 || p.Wanted.Mass.Value != 3 || p.Sure.Value != 0.4 || p.Furnace != string(h.Furnaces[0].ID) || !p.Promised["ore_planned"].P50.Known || len(p.Needs) < 8 {
		t.Errorf("%+v", p.Plan)
	}
	d.Script("g") // a line ticked
	d.Press("1")
	if !d.M.Shared().House().Plans[0].Done["somebody is named who closes"] {
		t.Errorf("not ticked: %+v\n%s", d.M.Shared().House().Plans[0].Done, d.Picture())
	}
	d.Press("esc")
	// Stores hold what there is against it.
	d.Press("v", "t")
	d.Shows("for the plan of 9 May")
	// The fire is lit by it, and Fire runs on it.
	d.Press("v", "p", "l")
	d.Shows("as planned: bloom of 3 kg")
	d.Press("pgdown", "enter")
	l := d.M.Running().Light()
	if d.M.Active() != screen.Fire || l.Plan == nil || l.Plan.UID != p.UID {
		t.Fatalf("lit on %s: %+v\n%s", d.M.Active(), l.Plan, d.Picture())
	}
	var recipe entry.Recipe
	for _, ev := range d.Acts() {
		if r, ok := ev.(entry.Recipe); ok {
			recipe = r
		}
	}
	if len(recipe.Ramp) < 4 || recipe.Ramp[0].Parts.Holds(entry.Ore) {
		t.Fatalf("ramp %+v", recipe)
	}
	r := d.M.Running().Reading()
	if len(r.Next) != 1 || r.Next[0].What != entry.Charcoal {
		t.Errorf("the first charge of the plan is charcoal alone: %+v", r.Next)
	}
	d.Press("f", "o", "m")
	for range recipe.Ramp[0].Charges {
		d.Press("c")
	}
	if r = d.M.Running().Reading(); len(r.Next) != 2 || r.Next[1].Lot == "" {
		t.Errorf("after %d charges ore is next, from its lot: %+v", recipe.Ramp[0].Charges, r.Next)
	}
}

// By how much there is too little is never cut, also where three figures have to stand in a
// small window.
func TestWhatIsTooLittleIsNotCut(t *testing.T) {
	d := ready(t)
	d.Send(tea.WindowSizeMsg{Width: desk.Small[0], Height: desk.Small[1]})
	d.Script("wb9.5\n")
	for _, row := range strings.Split(d.Picture(), "\n") {
		if left, _, table := strings.Cut(row, "│"); table && strings.Contains(left, "…") {
			t.Errorf("cut: %s", left)
		}
	}
	if !strings.Contains(d.Picture(), "kg -1") {
		t.Errorf("no three figures:\n%s", d.Picture())
	}
}

// In a small window the order of the day shows the moments that have room, each with its
// words, and the bloom.
func TestTheOrderOfTheDayInASmallWindow(t *testing.T) {
	for _, size := range [][2]int{{40, 20}, {60, 20}, {60, 24}, {79, 24}} {
		d := ready(t)
		d.Send(tea.WindowSizeMsg{Width: size[0], Height: size[1]})
		if clocks := regexp.MustCompile(`\d\d:\d\d\d\d:\d\d`).FindString(d.Picture()); clocks != "" {
			t.Errorf("%v: clocks run together: %q in\n%s", size, clocks, d.Picture())
		}
	}
	d := ready(t)
	d.Send(tea.WindowSizeMsg{Width: 60, Height: 20})
	d.Shows("light the wood fire")
	d.Shows("pull the bloom")
	if got := d.Picture(); strings.Contains(got, "careful") || !strings.Contains(got, "usual") || strings.Contains(got, "7 to…") {
		t.Errorf("not the way shown alone:\n%s", got)
	}
	d.Press("left")
	d.Shows("careful")
}

func TestPictures(t *testing.T) {
	for name, size := range map[string][2]int{"80x24": desk.Small, "120x36": desk.Usual, "200x60": desk.Large} {
		t.Run("plan_"+name, func(t *testing.T) {
			d := ready(t)
			d.Send(tea.WindowSizeMsg{Width: size[0], Height: size[1]})
			golden.RequireEqual(t, []byte(d.M.View()))
		})
	}
	for name, size := range map[string][2]int{"80x24": desk.Small, "120x36": desk.Usual} {
		t.Run("slag_"+name, func(t *testing.T) {
			d := ready(t)
			d.Send(tea.WindowSizeMsg{Width: size[0], Height: size[1]})
			d.Press("e")
			d.Shows("of slag")
			golden.RequireEqual(t, []byte(d.M.View()))
		})
	}
	for name, size := range map[string][2]int{"80x24": desk.Small, "120x36": desk.Usual} {
		t.Run("day_"+name, func(t *testing.T) {
			d := ready(t)
			d.Send(tea.WindowSizeMsg{Width: size[0], Height: size[1]})
			d.Script("mi8\n")
			golden.RequireEqual(t, []byte(d.M.View()))
		})
	}
	t.Run("nothing_80x24", func(t *testing.T) {
		d := desk.Sit(t)
		d.Send(tea.WindowSizeMsg{Width: 80, Height: 24})
		d.Press("v", "p")
		golden.RequireEqual(t, []byte(d.M.View()))
	})
}

// Nothing keyed but three times enter: the plan is of the usual furnace, and the fire is
// lit by it all the same.
func TestAPlanWithoutAFurnaceIsLitToo(t *testing.T) {
	d := desk.Sit(t)
	d.Press("e")
	for range 3 {
		d.Wait(time.Second)
		d.Press("enter")
	}
	d.Wait(time.Second)
	d.Press("enter", "l")
	d.Shows("as planned: bloom of 4 kg")
	d.Press("pgdown", "enter")
	d.Press("y")
	if l := d.M.Running().Light(); l.Plan == nil || l.Plan.Wanted.Mass.Value != 4 {
		t.Fatalf("lit with %+v\n%s", l.Plan, d.Picture())
	}
	if next := d.M.Running().Reading().Next; len(next) != 1 || next[0].What != entry.Charcoal {
		t.Errorf("the first charge of the plan is charcoal alone: %+v", next)
	}
}

// The ore rises as it is keyed, by the way shown, and the plan kept says so; back as it was
// it is the usual way again.
func TestTheOreRisesAsKeyed(t *testing.T) {
	d := ready(t)
	d.Shows("08:00 light the wood fire")
	d.Script("o")
	d.Shows("charcoal only after the fill: 6 charges")
	d.Script("p3\n")
	d.Script("i0.5\n")
	d.Script("m0.2\n\n") // less at most than first: refused, and asked again
	d.Answers("the most is less than the first")
	d.Script("m1\n")
	d.Press("enter")
	d.Answers("the ore rises so")
	d.Shows("own")
	d.Press("enter")
	h := d.M.Shared().House()
	p := h.Plans[len(h.Plans)-1]
	if p.Taken != "own" || len(p.Plans) != 3 || p.Plans[1].Steps[1].Charges != 3 {
		t.Fatalf("%+v", p.Plan)
	}
	for _, s := range p.Plans[1].Steps {
		for _, part := range s.Parts {
			if part.What == entry.Ore && part.Mass.Known && part.Mass.Value > 1.1 {
				t.Errorf("more than 1 kg dry: %+v", part)
			}
		}
	}
	d.Script("ow")
	d.Shows("usual")
}

// The day and the hour are keyed on the page of the day, which says by when what is to be
// done; the plan keeps both.
func TestTheDayOfAPlan(t *testing.T) {
	d := ready(t)
	d.Script("m")
	d.Shows("by when")
	d.Shows("2 days before")
	d.Script("i8\n") // eight days from the ninth of May
	d.Shows("Sunday 17 May")
	d.Shows("by Friday")
	d.Script("w")
	for range 5 {
		d.Press("backspace")
	}
	d.Script("99\n")
	d.Shows("no time of day")
	d.Press("backspace", "backspace")
	d.Script("630\n")
	d.Shows("06:30 light the wood fire")
	d.Script("o1230\n")
	d.Shows("until the bloom is to be out")
	d.Press("esc")
	d.Shows("Sun 17 May")
	d.Shows("06:30 light the wood fire")
	d.Press("enter")
	h := d.M.Shared().House()
	if p := h.Plans[len(h.Plans)-1]; p.Day != "2026-05-17" || p.Begins != "06:30" {
		t.Errorf("%q at %q", p.Day, p.Begins)
	}
	d.Press("v", "t")
	d.Shows("for the plan of 17 May")
}

// For a bar it is asked what the forge burns, once; over coal no charcoal is reckoned for it.
func TestTheForgesFuelIsAsked(t *testing.T) {
	d := desk.Sit(t)
	d.Press("v", "p", "w", "r", "1", "enter")
	d.Shows("what does the forge burn")
	d.Press("n")
	d.Shows("if it burns that")
	d.Press("w", "r", "1", "enter", "o")
	d.Shows("for the forge")
	d.Shows("not reckoned")
	d.Press("w", "b", "1", "enter")
	d.Answers("")
	if strings.Contains(d.Picture(), "for the forge") {
		t.Errorf("a bloom takes no forge:\n%s", d.Picture())
	}
}

// A plan made before anything was weighed goes by weight. Once bucket and scoop are weighed as the fire is lit, its charges are
// counted in them: nobody weighs each.
func TestAPlanByWeightIsCountedInWhatIsWeighedAtLighting(t *testing.T) {
	d := desk.Sit(t)
	d.KeyFurnace()
	d.KeyStores(desk.PondOre, desk.Alder("44"))
	d.Press("v", "p", "enter", "l")
	kept := plan.Ramp(d.M.Shared().House().Plans[0].Plan)
	if len(kept) == 0 || !kept[0].Parts[0].Mass.Known {
		t.Fatalf("kept as %+v", kept)
	}
	down := func(n int) {
		for range n {
			d.Press("down")
		}
	}
	down(7)
	d.Script("1.9")
	down(3)
	d.Script("0.48")
	d.Press("pgdown", "enter")
	ramp := d.Last().(entry.Recipe).Ramp
	if len(ramp) != len(kept) {
		t.Fatalf("charged by %+v\n%s", ramp, d.Picture())
	}
	for i, s := range ramp {
		for j, p := range s.Parts {
			each := map[entry.What]float64{entry.Charcoal: 1.9, entry.Ore: 0.48}[p.What]
			was := float64(kept[i].Parts[j].Mass.Value)
			if counted := float64(p.Count.Value) * each; p.Count.Known && math.Abs(counted-was) > 0.1*was || !p.Count.Known && float64(p.Mass.Value) != was {
				t.Errorf("%s: %v kg planned, charged as %+v", p.What, was, p)
			}
		}
	}
	if p := ramp[0].Parts[0]; !p.Count.Known || p.Count.Value != 1 || p.Measure != "bucket" {
		t.Errorf("the first charge is %+v", p)
	}
}

// In a narrow window a need is its number first: none is cut, and none loses it. Where there is too
// little it has a mark before it.
func TestTheNeedsOfANarrowWindowKeepTheirNumbers(t *testing.T) {
	number := regexp.MustCompile(`(\d( kg| lb)?|known) *$`)
	for _, pounds := range []bool{false, true} {
		for _, size := range [][2]int{{40, 14}, {57, 20}, {60, 20}} {
			d := ready(t)
			if pounds {
				d.Press("v", "e", "m", "v", "p")
			}
			d.Send(tea.WindowSizeMsg{Width: size[0], Height: size[1]})
			d.Script("wb9.5\n")
			rows, marked := 0, 0
			for _, row := range strings.Split(d.Picture(), "\n")[6:] {
				left, _, table := strings.Cut(row, "│")
				if !table || strings.TrimSpace(left) == "" {
					continue
				}
				rows++
				if strings.Contains(left, "…") || !number.MatchString(left) {
					t.Errorf("%v, pounds %v: %q", size, pounds, left)
				}
				if strings.HasPrefix(left, "!") {
					marked++
				}
			}
			if rows < 4 || size[0] < 58 && marked == 0 {
				t.Errorf("%v: %d needs, %d marked\n%s", size, rows, marked, d.Picture())
			}
		}
	}
}
