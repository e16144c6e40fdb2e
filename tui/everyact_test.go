package tui_test

import (
	"fmt"
	"reflect"
	"slices"
	"strings"
	"testing"
	"unicode"

	"github.com/charmbracelet/bubbles/key"

	"chargehand/model/entry"
	"chargehand/tui/desk"
	"chargehand/tui/draw"
	"chargehand/tui/fire"
	"chargehand/tui/screen"
	"chargehand/tui/words"
)

func counted(w entry.What, measure string, n entry.Count) entry.Part {
	return entry.Part{What: w, Measure: measure, Count: entry.Some(n)}
}

// keyedAct is an act: its keys at the fire and the entry they make.
type keyedAct struct {
	keys string
	want entry.Event
}

// everyAct is each of them. The practice furnace charges one bucket and two scoops.
func everyAct() []keyedAct {
	bucket, scoops := counted(entry.Charcoal, "bucket", 1), counted(entry.Ore, "scoop", 2)
	cm, mm := entry.Some[entry.Centimetre], entry.Some[entry.Millimetre]
	return []keyedAct{
		{"c", entry.Charge{Parts: entry.Parts{bucket, scoops}}},
		{"0", entry.Charge{Parts: entry.Parts{bucket, scoops}}},
		{"s", entry.Charge{Parts: entry.Parts{counted(entry.Ore, "scoop", 1)}}},
		{"+", entry.Charge{Parts: entry.Parts{counted(entry.Ore, "scoop", 1)}}},
		{"d", entry.Charge{Parts: entry.Parts{counted(entry.Ore, "scoop", 0.5)}}},
		{".", entry.Charge{Parts: entry.Parts{counted(entry.Ore, "scoop", 0.5)}}},
		{"f", entry.Charge{Parts: entry.Parts{bucket}}},
		{"b 7 2 0 enter", entry.Blast{Volume: entry.Some(entry.LitrePerMinute(720))}},
		{"b 7 2 0 , 5 enter", entry.Blast{Volume: entry.Some(entry.LitrePerMinute(720.5))}},
		{"b o", entry.Blast{State: entry.BlastOff}},
		{"b n", entry.Blast{State: entry.BlastOn}},
		{"b g 8 enter", entry.Blast{Gate: "8"}},
		{"b k 4 5 enter", entry.Blast{Strokes: entry.Some(entry.PerMinute(45))}},
		{"b t 3 enter", entry.Blast{Tuyeres: entry.Some(entry.Count(3))}},
		{"b m o 5 2 . 5 enter 3 0 enter 5 0 0 enter", entry.Blast{Read: entry.AirReading{
			With: entry.OrificePlate, Pipe: mm(52.5), Hole: mm(30), Pressure: entry.Some(entry.Pascal(500))}}},
		{"b m p 5 0 enter 3 0 enter", entry.Blast{Read: entry.AirReading{With: entry.PitotTube, Pipe: mm(50), Pressure: entry.Some(entry.Pascal(30))}}},
		{"b m v 5 0 enter 6 enter", entry.Blast{Read: entry.AirReading{With: entry.VaneAnemometer, Pipe: mm(50), Speed: entry.Some(entry.MetrePerSecond(6))}}},
		{"b m g 8 enter 6 1 0 enter", entry.Blast{Gate: "8", Volume: entry.Some(entry.LitrePerMinute(610))}},
		{"b m k 4 0 enter 4 8 0 enter", entry.Blast{Strokes: entry.Some(entry.PerMinute(40)), Volume: entry.Some(entry.LitrePerMinute(480))}},
		{"b m t 2 enter 5 0 0 enter", entry.Blast{Tuyeres: entry.Some(entry.Count(2)), Volume: entry.Some(entry.LitrePerMinute(500))}},
		{"b m l 4 0 enter 1 2 enter", entry.Blast{Strokes: entry.Some(entry.PerMinute(40)), Stroke: entry.Some(entry.Litre(12))}},
		{"b p 9 0 0 enter", entry.Blast{Pressure: entry.Some(entry.Pascal(900))}},
		{"t", entry.Tap{}},
		{"r", entry.Rod{}},
		{"p", entry.Poke{}},
		{"i 1 2 . 5 enter", entry.Dip{BelowRim: cm(12.5)}},
		{"i t 4 0 enter", entry.Dip{AboveTuyere: cm(40)}},
		{"l p w", entry.Look{At: entry.AtPeep, Sees: entry.PeepWhite}},
		{"l 1 1", entry.Look{At: entry.AtPeep, Sees: entry.PeepWhite}},
		{"l 1 5", entry.Look{At: entry.AtPeep, Sees: entry.PeepDark}},
		{"l p d", entry.Look{At: entry.AtPeep, Sees: entry.PeepDark}},
		{"l g a", entry.Look{At: entry.AtTopGas, Sees: entry.TopGasAlight}},
		{"e 1 2 9 0 enter enter", entry.Temperature{Degrees: 1290, Where: entry.WherePeep}},
		{"e 9 enter n", entry.Temperature{Degrees: 9}},
		{"w b 3 , 8 enter h", entry.Weigh{What: entry.WeighBloom, Mass: 3.8, State: entry.Hot}},
		{"w b 3 , 8 enter k", entry.Weigh{What: entry.WeighBloom, Mass: 3.8, State: entry.Cold}},
		{"w b 3 , 8 enter m", entry.Weigh{What: entry.WeighBloom, Mass: 3.8, State: entry.Compacted}},
		{"w b 3 , 8 enter enter", entry.Weigh{What: entry.WeighBloom, Mass: 3.8}},
		{"w b 3 , 8 enter esc", entry.Weigh{What: entry.WeighBloom, Mass: 3.8}},
		{"w k 2 enter", entry.Weigh{What: entry.WeighCharcoalLeft, Mass: 2}},
		{"w n b", entry.Weigh{What: entry.WeighBloom, Closed: true}},
		{"w n g", entry.Weigh{What: entry.WeighSlag, Closed: true}},
		{"w m b 2 enter w", entry.Weigh{What: entry.WeighMeasure, Name: "bucket", Mass: 2}},
		{"w m o . 6 enter n", entry.Weigh{What: entry.WeighMeasure, Name: "scoop", Mass: 0.6, FromNow: true}},
		{"w g 2 enter n", entry.Weigh{What: entry.WeighSlag, Mass: 2}},
		{"w g 2 enter k", entry.Weigh{What: entry.WeighSlag, Where: entry.SlagOfFurnace, Mass: 2}},
		{"w a 1 enter", entry.Weigh{What: entry.WeighWall, Mass: 1}},
		{"w r 1 enter", entry.Weigh{What: entry.WeighFragments, Mass: 1}},
		{"w l p i t enter 9 enter", entry.Weigh{What: entry.WeighLot, Name: "pit", Mass: 9}},
		{"n w i n d enter", entry.Note{Text: "wind"}},
		{"k", entry.Pause{}},
		{"up", entry.Recipe{Next: entry.Parts{bucket, counted(entry.Ore, "scoop", 3)}}},
		{"down", entry.Recipe{Next: entry.Parts{bucket, counted(entry.Ore, "scoop", 1)}}},
		{"right", entry.Recipe{Next: entry.Parts{counted(entry.Charcoal, "bucket", 1.5), scoops}}},
		{"left", entry.Recipe{Next: entry.Parts{counted(entry.Charcoal, "bucket", 0.5), scoops}}},
		{"o p y", entry.PhaseSet{Phase: entry.Preheat}},
		{"o i y", entry.PhaseSet{Phase: entry.Filling}},
		{"o m", entry.PhaseSet{Phase: entry.MainBurn}},
		{"o h", entry.OreHeld{}},
		{"o n", entry.OreHeld{Again: true}},
		{"o l", entry.LastOre{}},
		{"o b", entry.BurnDown{}},
		{"o o r", entry.Extract{From: "through the arch"}},
		{"o o n y", entry.Extract{None: true}},
		{"o k y", entry.PhaseSet{Phase: entry.Closed}},
		{"o r n 2 enter 1 . 5 enter", entry.Recipe{Next: entry.Parts{
			{What: entry.Charcoal, Mass: entry.Some(entry.Kilogram(2))}, {What: entry.Ore, Mass: entry.Some(entry.Kilogram(1.5))}}}},
		{"o r w 2 enter 0 enter", entry.Charge{Parts: entry.Parts{
			{What: entry.Charcoal, Mass: entry.Some(entry.Kilogram(2))}, {What: entry.Ore, Mass: entry.Some(entry.Kilogram(0))}}}},
		{"o r m b 2 enter enter", entry.Weigh{What: entry.WeighMeasure, Name: "bucket", Mass: 2}},
		{"o a o", entry.Arch{Open: true}},
		{"o a k", entry.Arch{}},
		{"o t a 2 5 enter", entry.Tuyere{Angle: entry.Some(entry.Degree(25))}},
		{"o t t 4 enter", entry.Tuyere{Proud: cm(4)}},
		{"o t b 2 2 enter", entry.Tuyere{Bore: entry.Some(entry.Millimetre(22))}},
		{"o t w c l a y enter", entry.Tuyere{Swapped: "clay"}},
		{"o r q g enter", entry.Sample{Of: "slag on a rod", Label: "1-S1"}},
		{"o r q z r o d enter 7 - S 3 enter", entry.Sample{Of: "rod", Label: "7-S3"}},
		{"o g J B enter enter", entry.HandOver{To: "JB"}},
		{"o g J B enter l", entry.HandOver{To: "JB", Covers: "slag and tapping"}},
		{"o a w l esc", entry.WallSeen{What: entry.WallSlump}},
		{"o a r n", entry.Weather{Rain: entry.RainNone}},
	}
}

// outcome is what became of a key.
type outcome string

// The outcomes that there are; there is no other.
const (
	bookedOnce outcome = "booked once"
	refused    outcome = "refused aloud"
	letter     outcome = "a letter"
	itsOwn     outcome = "a key of what is open"
	typedIn    outcome = "a letter, or refused aloud where the row takes none"
	closing    outcome = "a key of the screen, which closes what is open on it"
)

// must is what has to become of the first key of an act that is pressed there.
func (p place) must(k string) outcome {
	c, list, f, field := p.asks()
	t := screen.Typed(strings.ToLower(k))
	open := p.d.M.Dialog()
	switch {
	case open == nil && p.typing() || open != nil && open.Typing() && !list && !field: // a form, or rows of text
		if arrow(k) {
			return itsOwn
		}
		return typedIn
	case open != nil && arrow(k) && !(field && (k == "up" || k == "down")):
		return itsOwn // it looks for another line, or for a place in the field
	case list && uses(c, string(t)):
		return itsOwn
	case field && arrow(k):
		return refused
	case field && !f.Input.Number():
		return letter
	case field && f.Half(p.d.M.Shared()) == "" && slices.ContainsFunc(f.Instead, func(o screen.Option) bool { return key.Matches(t, o.Binding) }):
		return itsOwn
	case field && strings.Contains("0123456789.,", k):
		return letter
	case field && !strings.Contains(screen.ActKeys, string(t)):
		return refused
	case open != nil && !list && slices.ContainsFunc(open.Hints(), func(h draw.KeyHint) bool { return h.Key == string(t) }):
		return itsOwn
	case p.d.M.Active() == screen.Fire || p.beside() && key.Matches(t, fire.FromAfar...):
		return bookedOnce
	case key.Matches(t, p.d.M.Screen(p.d.M.Active()).Keys().All()...) || key.Matches(t, screen.Global.All()...):
		if open != nil {
			return closing
		}
		return itsOwn
	}
	return refused
}

// typing tells whether it is a form.
func (p place) typing() bool {
	form, is := p.d.M.Screen(p.d.M.Active()).(screen.Typer)
	return is && form.Typing()
}

// beside tells whether the screen takes some acts of the fire.
func (p place) beside() bool {
	_, is := p.d.M.Screen(p.d.M.Active()).(screen.Beside)
	return is
}

func arrow(k string) bool { return slices.Contains([]string{"up", "down", "left", "right"}, k) }

// Every act, keyed into everything that can be open: it is booked exactly once, as it is
// with nothing open, and the answer says both that and what became of what was open; or it
// is refused aloud; or it is a letter of a text or a digit of a number; or it is a line of
// what is open. Which of them is settled by what is open and by nothing else.
func TestEveryActInEverythingThatIsOpen(t *testing.T) {
	acts, places := everyAct(), everywhere(t)
	for _, a := range acts { // in large letters too
		if first, rest, _ := strings.Cut(a.keys, " "); len(first) == 1 && first >= "a" {
			acts = append(acts, keyedAct{strings.TrimSpace(strings.ToUpper(first) + " " + rest), a.want})
		}
	}
	kinds, done := map[string]bool{}, map[outcome]int{}
	for _, p := range places {
		kind := fmt.Sprintf("%T %s", p.d.M.Dialog(), p.d.M.Active())
		first := map[string]bool{}
		for _, a := range acts {
			keys := strings.Fields(a.keys)
			if kinds[kind] && (first[keys[0]] || keys[0] != strings.ToLower(keys[0])) {
				continue // each act as a whole into one of a kind, its first key into each
			}
			first[keys[0]] = true
			done[p.takes(t, keys)]++
		}
		kinds[kind] = true
	}
	t.Logf("%d places, %d acts: %v", len(places), len(acts), done)
	for _, o := range []outcome{bookedOnce, refused, letter, itsOwn, typedIn, closing} {
		if done[o] < 100 {
			t.Errorf("only %d times %s: the walk is broken", done[o], o)
		}
	}
}

// takes keys an act into what is open there and holds what becomes of it against what must.
func (p place) takes(t *testing.T, keys []string) outcome {
	t.Helper()
	d, must := aside(p.d), p.must(keys[0])
	fail := func(format string, args ...any) {
		t.Helper()
		t.Errorf("%s (%s), %s must be %s: %s", p.name, p.keys, strings.Join(keys, " "), must, fmt.Sprintf(format, args...))
	}
	before := ""
	if must == itsOwn || must == typedIn {
		before = d.Picture()
	}
	f, was := d.M.Dialog().(screen.Field)
	d.Press(keys[0])
	said, no := d.M.Answer()
	switch must {
	case typedIn:
		if !no && d.Picture() == before || no && said == "" || len(booked(d)) > 0 {
			fail("%q, booked %v", said, booked(d))
		}
	case itsOwn:
		if said == "" && d.Picture() == before && !arrow(keys[0]) {
			fail("nothing is seen of it")
		}
	case letter:
		now, stays := d.M.Dialog().(screen.Field)
		if !was || !stays || !strings.HasSuffix(now.Input.Text(), keys[0]) || len(booked(d)) > 0 {
			fail("%q, booked %v", said, booked(d))
		}
	case refused:
		if !no || said == "" || len(booked(d)) > 0 {
			fail("%q, booked %v", said, booked(d))
		}
		if now, stays := d.M.Dialog().(screen.Field); was && (!stays || f.Input.Number() && unicode.IsLetter([]rune(keys[0])[0]) && len(keys[0]) == 1 && now.Input.Text() != "") {
			fail("it does not stay, its number void: %v", d.M.Dialog())
		}
	case bookedOnce, closing:
		bare, off := aside(p.d), aside(p.d)
		if bare.M.Dialog() != nil {
			bare.M = bare.M.Open(nil)
		}
		bare.Press(keys[0])
		does, _ := bare.M.Answer()
		if p.d.M.Dialog() != nil && (!strings.HasSuffix(said, does) || len(said) <= len(does)) {
			fail("%q does not say both what was closed and %q", said, does)
		}
		if was && !strings.HasPrefix(said, words.NumberNotKept(f.Label, f.Input.Trimmed())) && !strings.HasPrefix(said, words.NumberNotKept(f.Label, "")) {
			fail("%q does not begin with the number that is not kept", said)
		}
		off.Press("esc") // what is kept of what was open, if it closes
		left := len(booked(off))
		if must == bookedOnce {
			d.Press(keys[1:]...)
			bare.Press(keys[1:]...)
		}
		if got, want := booked(d), booked(bare); len(got) != left+len(want) || len(want) > 0 && !reflect.DeepEqual(got[left:], want) {
			fail("booked %#v, want %#v", got, want)
		}
	}
	return must
}

// Each act is one entry, of its keys and of its smelt, and its answer says so.
func TestEachActsEntry(t *testing.T) {
	for _, c := range everyAct() {
		d := desk.Practising(t)
		before := len(d.Acts())
		d.Press(strings.Fields(c.keys)...)
		if n := len(d.Acts()) - before; n != 1 {
			t.Errorf("%s: %d acts, want 1; %q", c.keys, n, d.Said())
			continue
		}
		if got := d.Last(); !reflect.DeepEqual(got, c.want) {
			t.Errorf("%s: %#v, want %#v", c.keys, got, c.want)
		}
		es := d.M.Running().Entries()
		if e := es[len(es)-1]; e.Screen != "fire" || e.Key == "" || e.Local == "" || e.Stream != d.M.Running().ID() {
			t.Errorf("%s: kept as %+v", c.keys, e)
		}
		if said, refused := d.M.Answer(); said == "" || refused || len(d.M.About()) != 1 {
			t.Errorf("%s: the answer is %+v", c.keys, d.Said())
		}
	}
}
