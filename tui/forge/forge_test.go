package forge_test

import (
	"maps"
	"slices"
	"strings"
	"testing"
	"time"

	tea "github.com/charmbracelet/bubbletea"
	"github.com/charmbracelet/x/exp/golden"

	"chargehand/model/entry"
	"chargehand/model/house"
	"chargehand/tui/desk"
	"chargehand/tui/screen"
	"chargehand/tui/theme"
)

// smelt is an invented smelt that is over, of so much ore and with such a bloom.
func smelt(id, uid string, lit time.Time, ore, bloom entry.Kilogram) []entry.Entry {
	s := screen.Starters()[0]
	s.Furnace.Name = "Reed Hollow"
	var es []entry.Entry
	at := func(after time.Duration, ev entry.Event) {
		es = append(es, entry.Entry{Version: 1, Stream: id, Seq: uint64(len(es) + 1), Happened: lit.Add(after), Event: ev})
	}
	lot := entry.Lot{Name: "pond meadow", What: entry.Ore, Mix: "pond meadow", Moisture: entry.Some(entry.Share(0))}
	at(0, entry.Light{UID: uid, Furnace: s.Furnace, Measures: s.Measures, Lots: []entry.Lot{lot}})
	for i := range 10 {
		at(time.Duration(60+10*i)*time.Minute, entry.Charge{Parts: entry.Parts{{What: entry.Charcoal, Mass: entry.Some(entry.Kilogram(2))}, {What: entry.Ore, Lot: "pond meadow", Mass: entry.Some(ore / 10)}}})
	}
	at(4*time.Hour, entry.Extract{})
	at(5*time.Hour, entry.Weigh{What: entry.WeighBloom, Mass: bloom, State: entry.Cold})
	at(6*time.Hour, entry.PhaseSet{Phase: entry.Closed})
	return es
}

// book holds two smelts that are over.
func book() desk.Memory {
	early := desk.Noon.Wall
	return desk.Memory{
		"2026-03-10-reedhollow-a": smelt("2026-03-10-reedhollow-a", "00000000000000e6", early.AddDate(0, -2, 1), 22, 4.4),
		"2026-05-07-reedhollow-a": smelt("2026-05-07-reedhollow-a", "00000000000000e7", early.AddDate(0, 0, -2), 24, 4.6),
	}
}

// forging are the keys from a closed smelt's bloom to a knife with one cut and one weld
// across two smelts.
var forging = []string{
	"<enter>1<enter>5<enter>3<enter><right><enter>9<enter>3.1<pgdown><enter>", // compacted: 5 heats, 3 h, 9 kg of charcoal, 3.1 kg
	"k1.85<enter>1.2<enter>0.05<enter>",                                       // cut in two, crop ends kept
	"ii",                                                                      // into the fire and out again
	"<enter>23<enter>4<enter>2.66<enter><right><enter>6<enter>1.4<enter>2<pgdown><enter>", // folded and welded to a billet
	"eslong<esc>e1<esc>", // nothing done
	"e1l4<enter>",        // spark: long plain rays, 4 cm from the left
	"e3t12<enter>",       // bend
	"e2bmiddle<enter>",   // file
	"e4f28<enter>",       // quench: skates
	"oi20<enter>30<enter>320<enter>",
}

// forged is a desk in front of them.
func forged(t *testing.T) *desk.Desk {
	t.Helper()
	d := desk.SitAt(t, book(), desk.Noon, theme.Theme{})
	d.Press("v", "g")
	for _, line := range forging {
		d.Script(line)
	}
	return d
}

func piece(t *testing.T, d *desk.Desk, name string) house.Piece {
	t.Helper()
	for _, p := range d.M.Shared().House().Pieces {
		if p.Name == name {
			return p
		}
	}
	t.Fatalf("no piece %q:\n%s", name, d.Picture())
	return house.Piece{}
}

func TestFromABloomToABillet(t *testing.T) {
	d := forged(t)
	if p := piece(t, d, "billet 1"); float64(p.Mass.Value) != 1.4 || len(p.Tested) != 4 || p.From[0].Piece != piece(t, d, "half, one").UID {
		t.Errorf("%+v", p)
	}
	if p := piece(t, d, "half, one"); len(p.Sessions) != 1 || p.AllHeats() != 4 || !p.Spent {
		t.Errorf("%+v", p)
	}
	d.Shows("soft to steely, 4 tests")
	for _, e := range d.Book[entry.House] {
		if e.Kind() == entry.KindPiece && e.Screen != string(screen.Forge) {
			t.Errorf("%+v was not keyed at the forge", e)
		}
	}
}

// A weld makes one piece of two smelts; sold it is dim, and cannot be worked.
func TestWeldedSoldAndPutRight(t *testing.T) {
	d := forged(t)
	d.Script("w2iknife<enter>0.4<enter>") // the bloom of the other smelt is the second there
	p := piece(t, d, "knife")
	if len(p.From) != 2 || p.Form != entry.Finished {
		t.Errorf("%+v", p)
	}
	d.Shows("welded to bloom of")
	d.Script("ogAL<enter>")
	d.Shows("sold, AL")
	d.Press("enter")
	d.Answers("has left the house")
	d.Script("x")
	d.Answers("crossed out")
	if piece(t, d, "knife").EndsAs != "" {
		t.Error("still sold")
	}
	// Put right: the mass of the knife.
	d.Script("m1g0.35<enter>")
	if p := piece(t, d, "knife"); float64(p.Mass.Value) != 0.35 {
		t.Errorf("%+v\n%s", p.Mass, d.Picture())
	}
}

// What cannot be is asked once, and kept if it is so.
func TestAGrowingPieceIsAsked(t *testing.T) {
	d := forged(t)
	d.Script("ow1.9<enter><enter>")
	d.Shows("it grew from 1.4 kg to 1.9 kg")
	d.Press("y")
	d.Shows("weigh it again")
	if p := piece(t, d, "billet 1"); float64(p.Mass.Value) != 1.9 {
		t.Errorf("%+v", p.Mass)
	}
}

// A letter where one of several is chosen is answered with what can be, not passed over.
func TestALetterChoosesNoFuel(t *testing.T) {
	d := desk.SitAt(t, book(), desk.Noon, theme.Theme{})
	d.Press("v", "g")
	d.Script("<enter>1<enter>5<enter>3<enter>")
	d.Shows("1 not said, 2 charcoal, 3 coal, 4 gas")
	d.Press("c")
	if said, refused := d.M.Answer(); !refused || !strings.Contains(said, "2 charcoal") {
		t.Errorf("answered %q, refused %v", said, refused)
	}
	d.Script("2<enter>9<pgdown><enter>")
	var s entry.ForgeSession
	for _, p := range d.M.Shared().House().Pieces {
		for _, one := range p.Sessions {
			s = one.ForgeSession
		}
	}
	if s.Fuel.What != "charcoal" || s.Fuel.Kg != entry.Some(entry.Kilogram(9)) {
		t.Errorf("%+v", s)
	}
}

// What is half typed of a session is shown again, also after a call to the fire.
func TestAHalfTypedSessionIsADraft(t *testing.T) {
	d := forged(t)
	d.Script("<enter>4<enter>7<enter>2.5")
	d.Wait(11 * time.Minute)
	if strings.Contains(d.Picture(), "all optional") {
		t.Error("it stays open for ever")
	}
	d2 := desk.SitAt(t, d.Book, d.At, theme.Theme{})
	d2.Press("v", "g", "enter")
	d2.Shows("draw out")
	d2.Shows("2.5")
	d2.Script("<pgdown><enter>")
	d2.Answers("draw out · 7 heats · 2 h 30")
}

// Each caution is shown once a person, at its deed, and stands in no key's way.
func TestCautionsAtTheirDeed(t *testing.T) {
	d := desk.SitAt(t, book(), desk.Noon, theme.Theme{})
	d.Press("v", "g")
	d.Press("i")
	d.Shows("Eyes: scale and slag fly")
	d.Press("i", "i")
	d.Shows("Hot work")
	if n := count(d, "forge eyes"); n != 1 {
		t.Errorf("shown %d times", n)
	}
}

func count(d *desk.Desk, caution string) (n int) {
	for _, e := range d.Book[entry.House] {
		if c, ok := e.Event.(entry.CautionShown); ok && c.Caution == caution {
			n++
		}
	}
	return n
}

func TestPictures(t *testing.T) {
	for _, c := range []struct {
		name string
		sit  func(*testing.T) *desk.Desk
		keys string
	}{
		{"empty", func(t *testing.T) *desk.Desk { d := desk.Sit(t); d.Press("v", "g"); return d }, ""},
		{"forged", forged, "<up><down>"},
		{"session", forged, "<enter>2<enter>3"},
		{"deeds", forged, "o"},
		{"burning", func(t *testing.T) *desk.Desk { d := desk.Smelting(t, theme.Theme{}); d.Press("v", "g"); return d }, "nbold bloom<enter>a gift<enter>2019<enter>2.7<enter>i"},
	} {
		for _, size := range [][2]int{desk.Small, desk.Usual, desk.Large} {
			t.Run(c.name+"_"+map[[2]int]string{desk.Small: "80x24", desk.Usual: "120x36", desk.Large: "200x60"}[size], func(t *testing.T) {
				d := c.sit(t)
				d.Send(tea.WindowSizeMsg{Width: size[0], Height: size[1]})
				d.Script(c.keys)
				golden.RequireEqual(t, []byte(d.M.View()))
			})
		}
	}
}

// A session may have been on several pieces at once: each is taken in by its digit, and
// bears its part of hours and fuel.
func TestASessionOnSeveralPieces(t *testing.T) {
	d := desk.SitAt(t, book(), desk.Noon, theme.Theme{})
	d.Press("v", "g")
	d.Script("<enter>2<enter>4<enter>2<enter><pgdown><up>91")
	d.Shows("also worked")
	d.Script("<down><enter>")
	ps := d.M.Shared().House().Pieces
	n := 0
	for _, p := range ps {
		for _, s := range p.Sessions {
			if n++; len(s.Pieces) != 2 || s.Part <= 0 || s.Part >= 1 || s.Hours.Value != 2 {
				t.Errorf("session %+v", s)
			}
		}
	}
	if n != 2 {
		t.Errorf("%d pieces have it\n%s", n, d.Picture())
	}
	d.Script("<enter>2<enter>3<down><down><down><down><down>2<pgdown><up>1<down><enter>")
	d.Shows("made by welding")
}

// How much of the fuel was keyed is read whole, on a second line where the first is short.
func TestWhatWasKeyedOfTheFuelIsNotCut(t *testing.T) {
	d := desk.SitAt(t, book(), desk.Noon, theme.Theme{})
	d.Send(tea.WindowSizeMsg{Width: desk.Usual[0], Height: desk.Usual[1]})
	d.Press("v", "g")
	d.Script("<enter>1<enter>5<enter>3<enter>2<enter>9<enter>3.1<pgdown><enter>")
	d.Script("<enter>2<enter>3<enter>2<enter>3<enter>5<enter>2.8<pgdown><enter>")
	p := strings.Join(strings.Fields(strings.ReplaceAll(d.Picture(), "│", " ")), " ")
	if !strings.Contains(p, "keyed in 50 %") || strings.Contains(p, "keyed…") || strings.Contains(p, "ke…") {
		t.Errorf("cut:\n%s", d.Picture())
	}
}

// Whichever piece is picked has its mark, also one of which nothing more is made.
func TestEveryPickedPieceIsMarked(t *testing.T) {
	d := forged(t)
	d.Press("home")
	mark, seen := theme.Theme{}.Marks().Picked, map[string]bool{}
	for range 12 {
		picked := ""
		for _, row := range strings.Split(d.Picture(), "\n") {
			if strings.HasPrefix(row, mark) {
				picked = row
			}
		}
		if picked == "" {
			t.Fatalf("no row is marked after %q:\n%s", slices.Sorted(maps.Keys(seen)), d.Picture())
		}
		seen[picked] = true
		d.Press("down")
	}
	if len(seen) < 4 {
		t.Errorf("only %d rows were picked", len(seen))
	}
}
