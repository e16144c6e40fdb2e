package stores_test

import (
	"math"
	"strings"
	"testing"
	"time"

	tea "github.com/charmbracelet/bubbletea"
	"github.com/charmbracelet/x/exp/golden"

	"chargehand/model/entry"
	"chargehand/model/lot"
	"chargehand/tui/desk"
	"chargehand/tui/screen"
	"chargehand/tui/theme"
)

// Keyed is what a person keys to have ore dug and roasted, and a drum of charcoal.
var keyed = []string{
	"n1dpond meadow\n62\n31\n",   // ore, dug, its name, kg, water
	"or46\n\n\n33\n3\n",          // of it roasted, 46 kg, a new lot as it is called, 33 kg, water
	"w31\n",                      // counted again
	"n2balder, drum 3\n44\n12\n", // charcoal, bought
	"n3balder, split\nk1.6\n\n",  // wood, stacked
}

// stocked is a desk in front of such stores.
func stocked(t *testing.T) *desk.Desk {
	t.Helper()
	d := desk.Sit(t)
	d.KeyStores(keyed...)
	return d
}

func TestWhatIsKeyedIsThere(t *testing.T) {
	d := stocked(t)
	s := d.M.Shared().House()
	left := func(name string) float64 {
		t.Helper()
		l, ok := s.Lot(name)
		if !ok {
			t.Fatalf("no lot %s in\n%s", name, d.Picture())
		}
		return l.Weight(l.Left.Kg)
	}
	for name, want := range map[string]float64{"pond meadow": 16, "pond meadow, roasted": 31, "alder, drum 3": 44} {
		if got := left(name); got < want-0.01 || got > want+0.01 {
			t.Errorf("%s: %v kg as it lies, want %v", name, got, want)
		}
	}
	d.Shows("pond meadow, roasted")
	// Nothing is refused for being below nothing: it is told.
	d.Press("home")
	d.Script("ol20\n")
	d.Answers("more used than there was")
	d.Shows("below nothing")
	d.Press("x")
	d.Answers("crossed out: sold: 20 kg pond meadow")
	if got := left("pond meadow"); got != left("pond meadow") || !strings.Contains(d.Picture(), "16 ±2 kg") {
		t.Errorf("crossed out it is not as before:\n%s", d.Picture())
	}
	for _, e := range d.Book[entry.House] {
		if e.Screen == "" || e.Kind() == entry.KindDeed && e.Screen != string(screen.Stores) {
			t.Errorf("%+v was not keyed at the stores", e)
		}
	}
}

// Every key is in the journal, in the stream of the house, and every deed carries the key
// that ended it.
func TestKeysOfTheStoresAreKept(t *testing.T) {
	d := stocked(t)
	d.Wait(2 * time.Second)
	pressed := 0
	for _, e := range d.Book[entry.House] {
		if ks, ok := e.Event.(entry.Keys); ok {
			pressed += len(ks.Pressed)
		} else if e.Key != "" {
			pressed++
		}
	}
	want := 2
	for _, line := range keyed {
		want += len(line)
	}
	if pressed != want {
		t.Errorf("%d keys in the book, %d were pressed", pressed, want)
	}
}

// 89 % iron is asked about with its reason, and answered no it is not kept.
func TestImpossibleIronIsAsked(t *testing.T) {
	d := stocked(t)
	d.Press("home", "down")
	d.Script("ai89\nir")
	d.Shows("formula weight of FeOOH")
	assays := func() (n int) {
		for _, e := range d.Book[entry.House] {
			if _, ok := e.Event.(entry.Assay); ok {
				n++
			}
		}
		return n
	}
	d.Press("n", "esc")
	if assays() != 0 {
		t.Error("kept though it was answered no")
	}
	d.Script("ai48\nir")
	if assays() != 1 {
		t.Errorf("an assay of 48 %% is not kept:\n%s", d.Picture())
	}
	d.Shows("measured")
}

// An amount in a measure that was never weighed is known as soon as the measure is.
func TestAMeasureWeighedLater(t *testing.T) {
	d := stocked(t)
	d.Press("home")
	d.Script("oembarrow\n\n3\n\n")
	d.Shows("at least")
	d.Script("kb52\n")
	l, _ := d.M.Shared().House().Lot("pond meadow")
	if w := l.Weight(l.Left.Kg); !l.Left.Known() || w < 16+150 || w > 16+160 {
		t.Errorf("three barrows of 52 kg: %v kg\n%s", w, d.Picture())
	}
}

// An amount is put right, and moved to the day it was.
func TestPutRight(t *testing.T) {
	d := stocked(t)
	d.Press("home", "down")
	d.Script("e1") // the newest line is the count
	d.Shows("another weight")
	d.Script("a30\n")
	d.Answers("30 kg")
	l, _ := d.M.Shared().House().Lot("pond meadow, roasted")
	if w := l.Weight(l.Left.Kg); w < 29.99 || w > 30.01 {
		t.Errorf("%v kg", w)
	}
	d.Script("e2p2\n")
	d.Script("e2o4\n")
	d.Script("e2edry\n")
	deed := entry.Deed{}
	for _, line := range d.M.Shared().Home.Lines() {
		if is, ok := line.Event.(entry.Deed); ok && is.Does == entry.Roasted {
			deed = is
		}
	}
	if deed.People.Value != 2 || deed.Hours.Value != 4 || deed.Weather != "dry" || len(deed.In) != 1 || deed.In[0].Mass.Value != 46 {
		t.Errorf("the roast by two in four hours: %+v", deed)
	}
	d.Script("e1w3\n")
	d.Answers("6 May") // three days before the ninth
	l, _ = d.M.Shared().House().Lot("pond meadow, roasted")
	if w := l.Weight(l.Left.Kg); w < 60 {
		t.Errorf("counted before it was roasted: %v kg", w)
	}
}

// While a smelt burns its row stays, its acts are keyed from here, and after a minute the
// screen is Fire's again.
func TestBesideAFire(t *testing.T) {
	d := desk.Practising(t)
	d.Press("v", "t")
	d.Shows("what there is")
	n := len(d.Acts())
	d.Press("c")
	if len(d.Acts()) != n+1 {
		t.Errorf("a charge from the stores: %v", d.Acts())
	}
	d.Answers("charge")
	d.Press("s", "s", "r")
	if len(d.Acts()) != n+4 || d.M.Active() != screen.Stores {
		t.Errorf("scoops and rod from the stores: %v on %s", d.Acts()[n:], d.M.Active())
	}
	for range 7 {
		d.Wait(10 * time.Second)
	}
	if d.M.Active() != screen.Fire {
		t.Errorf("after a minute the screen is %s", d.M.Active())
	}
}

// A charcoal burn asks for wood, charcoal, brands and fines, says its yields without fines,
// and leaves brands with the wood and the fines out of what can be charged.
func TestACharcoalBurn(t *testing.T) {
	d := stocked(t)
	d.Script("n3bhornbeam\n200\n20\n")
	d.Script("ob")
	for range 3 {
		d.Press("backspace")
	}
	d.Script("100\nn\n9.5\n5\n4\n0.5\n")
	d.Answers("% of the wood as it lay")
	d.Answers("brands 4 kg")
	d.Answers("fines 5 %")
	h := d.M.Shared().House()
	for name, want := range map[string]float64{"hornbeam": 100, "hornbeam, brands": 4} {
		l, ok := h.Lot(name)
		if w := l.Weight(l.Left.Kg); !ok || w < want-0.01 || w > want+0.01 {
			t.Errorf("%s: %v kg\n%s", name, w, d.Picture())
		}
	}
	fines, coal := 0, 0
	for _, l := range h.Lots {
		switch {
		case l.Fines():
			fines++
		case l.Of() == entry.LotCharcoal:
			coal++
		}
	}
	left, _, _ := h.Left(entry.LotCharcoal)
	if alder, _ := h.Lot("alder, drum 3"); fines != 1 || coal != 2 || left.Kg > alder.Left.Kg+9.5 {
		t.Errorf("%d heaps of fines, %d lots of charcoal, %.1f kg\n%s", fines, coal, left.Kg, d.Picture())
	}
}

// Ore without an assay is judged by what it shows: the signs are set one by one, kept with
// enter, go with the ore when it is worked, and move the iron that is assumed.
func TestSignsOfOreAreKeyed(t *testing.T) {
	d := stocked(t)
	d.Press("home")
	iron := func(name string) lot.Share {
		l, _ := d.M.Shared().House().Lot(name)
		return lot.IronShare(l)
	}
	before := iron("pond meadow")
	d.Press("a", "g")
	d.Shows("dark red")
	d.Press("1", "4")
	d.Shows("dark red: yes")
	d.Press("4")
	d.Press("6", "enter")
	d.Answers("dark red, heavy")
	l, _ := d.M.Shared().House().Lot("pond meadow")
	if got := l.Signs; len(got) != 2 || got[0] != entry.SignDarkRed || got[1] != entry.SignHeavy {
		t.Errorf("%v\n%s", got, d.Picture())
	}
	if now := iron("pond meadow"); now.P50 <= before.P50 || now.Basis != entry.BasisAssumed {
		t.Errorf("%+v, before %+v", now, before)
	}
	d.Shows("dark red, heavy")
	d.Press("o")
	d.Press(optionOf(d, "picked over"))
	d.Script("\nn\n15\n")
	h := d.M.Shared().House()
	if over, ok := h.Lot("pond meadow, picked over"); !ok || len(over.Signs) != 2 {
		t.Errorf("%v %+v\n%s", ok, over, d.Picture())
	}
}

// Three sieves part four heaps; what is no row of widths is refused and stays.
func TestMoreSievesThanTwo(t *testing.T) {
	d := stocked(t)
	d.Press("home", "down")
	d.Press("o")
	d.Press(optionOf(d, "sieved"))
	d.Script("3 x\n")
	d.Shows("type the sieves in mm")
	d.Press("backspace")
	d.Script("15 8\n") // 3, 15 and 8 in any order
	d.Script("2\n4\n10\n")
	d.Shows("between 8 and 15 mm")
	d.Press("enter") // the rest of 31 kg
	d.Answers("6 % fines out")
	h := d.M.Shared().House()
	l, _ := h.Lot("pond meadow, roasted")
	if w := l.Weight(l.Left.Kg); w < 24.99 || w > 25.01 {
		t.Errorf("%.2f kg lie between the sieves\n%s", w, d.Picture())
	}
	want := (10*math.Sqrt(3*8) + 15*math.Sqrt(8*15)) / 25
	if len(l.Sizes) != 2 || l.Sizes[1].Over != 8 || math.Abs(float64(l.Sizes[1].Share)-0.6) > 1e-6 || math.Abs(float64(l.Lump.Value)-want) > 1e-6 {
		t.Errorf("%+v, lump %v, want %.2f", l.Sizes, l.Lump, want)
	}
	d.Shows("3 to 8 mm 40 %")
	fines, coarse := 0.0, 0.0
	for _, o := range h.Lots {
		switch {
		case o.Fines():
			fines += o.Weight(o.Left.Kg)
		case strings.Contains(o.Name, "over 15 mm"):
			coarse += o.Weight(o.Left.Kg)
		}
	}
	if fines < 1.99 || fines > 2.01 || coarse < 3.99 || coarse > 4.01 {
		t.Errorf("%.2f kg of fines, %.2f kg over the coarsest", fines, coarse)
	}
	d.Press("x") // its lot went with the deed, the line names it all the same
	if !strings.Contains(d.Picture(), "and 2 kg pond meadow, roasted, under") {
		t.Errorf("the line that is crossed out does not name the heap\n%s", d.Picture())
	}
}

// What lies in no heap after sieving is gone as dust, or was not sieved yet: the lot has it no
// more, or still. Nearly all of a lot in the heaps, enter takes the rest for dust.
func TestDustOfSievingIsNotInTheLot(t *testing.T) {
	for _, c := range []struct {
		name, middle, answer string
		left                 float64
		says                 string
	}{
		{"dust by enter", "27.5", "enter", 27.5, "1.5 kg gone as dust"},
		{"not sieved yet", "27.5", "p", 29, ""},
		{"half of it sieved", "12", "enter", 29, ""}, // 2 kg under, 12 between, 17 as they lay
		{"all in the heaps", "29", "", 29, ""},
	} {
		d := stocked(t)
		d.Press("home", "down", "o")
		d.Press(optionOf(d, "sieved"))
		d.Script("3 15\n2\n0\n")
		d.Script(strings.Repeat("<backspace>", 6) + c.middle + "\n")
		if c.answer != "" {
			d.Shows("more lay there than lies in the heaps now")
			d.Press(c.answer)
		}
		d.Answers("fines out")
		d.Answers(c.says)
		l, _ := d.M.Shared().House().Lot("pond meadow, roasted")
		if w := l.Weight(l.Left.Kg); math.Abs(w-c.left) > 0.01 {
			t.Errorf("%s: %.2f kg left, want %.2f\n%s", c.name, w, c.left, d.Picture())
		}
	}
}

// What a roast burnt and cost is keyed behind its line, and is taken from the wood.
func TestFuelAndCostOfADeed(t *testing.T) {
	d := stocked(t)
	d.Press("home", "down")
	d.Script("e2m") // the roast
	d.Shows("alder, split")
	d.Script("212\n")
	d.Answers("burning 12 kg alder, split")
	d.Script("e2y4.50\nEUR\n")
	d.Answers("cost 4.5 EUR")
	for _, line := range d.M.Shared().Home.Lines() {
		if is, ok := line.Event.(entry.Deed); ok && is.Does == entry.Roasted {
			if len(is.Fuel) != 1 || is.Fuel[0].Mass.Value != 12 || is.Cost == nil || is.Cost.Amount != 4.5 || is.Cost.Currency != "EUR" {
				t.Errorf("%+v", is)
			}
		}
	}
	if l, _ := d.M.Shared().House().Lot("alder, split"); len(l.Changes) != 2 || !l.Changes[0].Took {
		t.Errorf("not taken from the wood: %+v", l.Changes)
	}
}

// Roasted ore that got wet is told to be dried, at its row and below, and with a caution; ore
// that cannot pay its own slag is told so.
func TestOreThatShouldNotGoIn(t *testing.T) {
	d := stocked(t)
	d.Press("home", "down")
	d.Script("mp")
	for range 3 {
		d.Press("backspace")
	}
	d.Script("12\n")
	d.Shows("damp: dry it first")
	d.Shows("roasted, gave 33 kg") // as it was weighed, whatever rained on it since
	d.Shows("wet ore steams and spits")
	d.Wait(2 * time.Second)
	d.Shows("damp ore")
	d.Press("esc")
	d.Script("aoe30\ni60\n\nry")
	d.Shows("cannot pay its slag")
	d.Shows("cannot pay its own slag: it holds 21 % iron")
}

// optionOf is the key of a line of the open list.
func optionOf(d *desk.Desk, word string) string {
	d.T.Helper()
	for _, line := range strings.Split(d.Picture(), "\n") {
		if at := strings.Index(line, word); at > 0 {
			if fields := strings.Fields(line[:at]); len(fields) > 0 {
				return fields[len(fields)-1]
			}
		}
	}
	d.T.Fatalf("no line %s in\n%s", word, d.Picture())
	return ""
}

func TestPictures(t *testing.T) {
	for _, c := range []struct {
		name string
		sit  func(*testing.T) *desk.Desk
		keys []string
	}{
		{"empty", func(t *testing.T) *desk.Desk { d := desk.Sit(t); d.Press("v", "t"); return d }, nil},
		{"stocked", stocked, []string{"home", "down"}},
		{"deeds", stocked, []string{"home", "o"}},
		{"burning", func(t *testing.T) *desk.Desk {
			d := desk.Smelting(t, theme.Theme{})
			d.KeyStores(keyed...)
			return d
		}, []string{"home", "down"}},
	} {
		for _, size := range [][2]int{desk.Small, desk.Usual, desk.Large} {
			t.Run(c.name+"_"+map[[2]int]string{desk.Small: "80x24", desk.Usual: "120x36", desk.Large: "200x60"}[size], func(t *testing.T) {
				d := c.sit(t)
				d.Send(tea.WindowSizeMsg{Width: size[0], Height: size[1]})
				d.Press(c.keys...)
				golden.RequireEqual(t, []byte(d.M.View()))
			})
		}
	}
}

// A measure that was made for a lot goes with it when it is crossed out; the line names it all the same.
func TestACrossedOutMeasureIsNamed(t *testing.T) {
	d := desk.Sit(t)
	d.KeyStores("n1dpond meadow\n62\n31\n", "n2balder\nmsack\n10.4\n9\n\n")
	d.Shows("9 sacks of alder")
	d.Press("x")
	d.Shows("× bought: 9 sacks of alder")
	d.Answers("9 sacks of alder")
}

// What was weighed stands with the lot as it was keyed.
func TestAWeighingStandsAsItWasKeyed(t *testing.T) {
	d := desk.Sit(t)
	d.KeyStores("n1dpond meadow\n42.5\n\n")
	d.Shows("dug, 42.5 kg")
}
