package tui_test

import (
	"reflect"
	"strings"
	"testing"
	"time"

	"chargehand/model/entry"
	"chargehand/tui/desk"
	"chargehand/tui/screen"
)

func counted(w entry.What, measure string, n entry.Count) entry.Part {
	return entry.Part{What: w, Measure: measure, Count: entry.Some(n)}
}

// Each act's keys and the entry they make. The practice furnace charges one
// bucket and two scoops.
func TestEachActsEntry(t *testing.T) {
	bucket, scoops := counted(entry.Charcoal, "bucket", 1), counted(entry.Ore, "scoop", 2)
	cm, mm := entry.Some[entry.Centimetre], entry.Some[entry.Millimetre]
	for _, c := range []struct {
		keys string
		want entry.Event
	}{
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
		{"l t a", entry.Look{At: entry.AtTopGas, Sees: entry.TopGasAlight}},
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
		{"w g 2 enter", entry.Weigh{What: entry.WeighSlag, Mass: 2}},
		{"w r 1 enter", entry.Weigh{What: entry.WeighFragments, Mass: 1}},
		{"w l p i t enter 9 enter", entry.Weigh{What: entry.WeighLot, Name: "pit", Mass: 9}},
		{"n w i n d enter", entry.Note{Text: "wind"}},
		{"k", entry.Pause{}},
		{"up", entry.Recipe{Next: entry.Parts{bucket, counted(entry.Ore, "scoop", 3)}}},
		{"down", entry.Recipe{Next: entry.Parts{bucket, counted(entry.Ore, "scoop", 1)}}},
		{"right", entry.Recipe{Next: entry.Parts{counted(entry.Charcoal, "bucket", 1.5), scoops}}},
		{"left", entry.Recipe{Next: entry.Parts{counted(entry.Charcoal, "bucket", 0.5), scoops}}},
		{"o p", entry.PhaseSet{Phase: entry.Preheat}},
		{"o i", entry.PhaseSet{Phase: entry.Filling}},
		{"o m", entry.PhaseSet{Phase: entry.MainBurn}},
		{"o h", entry.OreHeld{}},
		{"o n", entry.OreHeld{Again: true}},
		{"o l y", entry.LastOre{}},
		{"o b y", entry.BurnDown{}},
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
		{"o q r o d enter", entry.Sample{Of: "rod"}},
		{"o g J B enter enter", entry.HandOver{To: "JB"}},
		{"o g J B enter l", entry.HandOver{To: "JB", Covers: "slag and tapping"}},
		{"o a w l esc", entry.WallSeen{What: entry.WallSlump}},
		{"o a r n", entry.Weather{Rain: entry.RainNone}},
	} {
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

func TestAboutTheLastAct(t *testing.T) {
	d := desk.Practising(t)
	d.Press("c")
	seq := d.M.Running().Reading().Charges[0].Seq
	d.Press("g")
	if ev := d.Last().(entry.Level); ev.Charge.Seq != seq || ev.Remark != entry.NotToMark {
		t.Errorf("%+v", ev)
	}
	d.Press("j")
	if ev := d.Last().(entry.Level); ev.Charge.Seq != seq || ev.Remark != entry.Heaped {
		t.Errorf("%+v", ev)
	}
}

func TestFillComesBeforeTheMainBurn(t *testing.T) {
	d := desk.Sit(t)
	d.Press("p", "f")
	if _, ok := d.Last().(entry.Fill); !ok {
		t.Errorf("charcoal before the main burn is %#v", d.Last())
	}
	d.Shows("fill a measure")
	d.Press("c", "f")
	if ev, ok := d.Last().(entry.Charge); !ok || ev.Parts.Holds(entry.Ore) {
		t.Errorf("charcoal in the main burn is %#v", d.Last())
	}
}

func TestPauseAndGoOn(t *testing.T) {
	d := desk.Practising(t)
	d.Press("k")
	d.Wait(time.Second)
	d.Press("k")
	if _, ok := d.Last().(entry.Resume); !ok {
		t.Errorf("the second press made %#v", d.Last())
	}
}

// While ore is held the charge shown has none, and ore again brings it back,
// whatever was changed meanwhile.
func TestOreHeldAndAgain(t *testing.T) {
	d := desk.Practising(t)
	d.Press("o", "h")
	d.Press("c")
	if ev := d.Last().(entry.Charge); ev.Parts.Holds(entry.Ore) {
		t.Errorf("ore is held and the charge is %+v", ev)
	}
	d.Press("right", "o", "n", "c")
	ev := d.Last().(entry.Charge)
	n, _ := ev.Parts.Count(entry.Ore)
	c, _ := ev.Parts.Count(entry.Charcoal)
	if n != 2 || c != 1.5 {
		t.Errorf("after ore again the charge is %+v", ev)
	}
}

func TestArrowsStopAtNone(t *testing.T) {
	d := desk.Practising(t)
	d.Press("down", "down")
	before := len(d.Acts())
	d.Press("down")
	if len(d.Acts()) != before {
		t.Error("less than none was booked")
	}
	d.Answers("no ore already")
	d.Press("c")
	if ev := d.Last().(entry.Charge); ev.Parts.Holds(entry.Ore) {
		t.Errorf("%+v", ev)
	}
	d.Press("up")
	if n, _ := d.Last().(entry.Recipe).Next.Count(entry.Ore); n != 1 {
		t.Errorf("one up from none is %v scoops", n)
	}
}

func TestQuestionsAskOnce(t *testing.T) {
	for _, no := range []string{"n", "esc"} {
		d := desk.Practising(t)
		before := len(d.Acts())
		d.Press("o", "b")
		d.Shows("burn-down begins: sure")
		d.Press(no)
		if len(d.Acts()) != before || d.M.Dialog() != nil {
			t.Errorf("%s did not call it off", no)
		}
	}
}

func TestChargeInTheBurnDownAsks(t *testing.T) {
	for _, k := range []string{"c", "f", "s"} {
		d := desk.Practising(t)
		d.Press("c", "o", "b", "y")
		before := len(d.Acts())
		d.Press(k)
		if len(d.Acts()) != before {
			t.Errorf("%s booked without asking", k)
		}
		d.Shows("charge all the same")
		d.Press("y")
		if _, ok := d.Last().(entry.Charge); !ok {
			t.Errorf("%s and yes made %#v", k, d.Last())
		}
	}
}

func TestBadInputLosesNothing(t *testing.T) {
	d := desk.Practising(t)
	d.Press("i", "1", ",", "2", ",", "enter")
	d.Answers("is no number")
	d.Shows("1,2,")
	d.Press("backspace", "enter")
	if ev, ok := d.Last().(entry.Dip); !ok || ev.BelowRim.Value != 1.2 {
		t.Errorf("%#v", d.Last())
	}
	d.Press("e", "9", "9", "9", "9", "enter")
	d.Answers("type 0 to 2000")
	d.Press("x")
	d.Answers("so 9999 does not count")
	d.Press("esc")
	if d.M.Dialog() != nil {
		t.Error("esc did not leave the field")
	}
}

func TestUnknownKeyAnswers(t *testing.T) {
	d := desk.Practising(t)
	d.Press("z")
	d.Answers("nothing on z")
	d.Press("l", "z")
	d.Answers("none on z")
	if d.M.Dialog() == nil {
		t.Error("a wrong key closed the list")
	}
}

func TestEveryKeyIsJournaled(t *testing.T) {
	d := desk.Practising(t)
	at := len(d.M.Running().Entries())
	d.Press("q", "l", "z", "esc", "b", "7", "backspace", "8", "enter", "v", "b", "up", "c")
	d.Wait(time.Second)
	var keyed []string
	for _, e := range d.M.Running().Entries()[at:] {
		if ks, ok := e.Event.(entry.Keys); ok {
			for _, p := range ks.Pressed {
				keyed = append(keyed, p.Key)
			}
			continue
		}
		keyed = append(keyed, e.Key)
	}
	want := "q l z esc b 7 backspace 8 enter v b up c"
	if got := strings.Join(keyed, " "); got != want {
		t.Errorf("journaled %s\n    want %s", got, want)
	}
}

func TestKeysOutsideASmeltGoToTheHouse(t *testing.T) {
	d := desk.Sit(t)
	d.Press("down", "x")
	d.Wait(time.Second)
	if n := len(d.Book[entry.House]); n != 1 {
		t.Fatalf("%d entries in the house, want one batch", n)
	}
	ks := d.Book[entry.House][0].Event.(entry.Keys)
	if len(ks.Pressed) != 2 || ks.Pressed[1].AfterMs != 500 {
		t.Errorf("%+v", ks)
	}
}

// What is ready is a matter of safety: a line keeps its letter, ticked or not.
func TestReadyLinesKeepTheirLetters(t *testing.T) {
	d := desk.Practising(t)
	d.Press("o", "b", "y", "o", "w", "r")
	letters := func() (all []string) {
		for _, o := range d.M.Dialog().(screen.Choice).Options {
			all = append(all, o.Keys()[0])
		}
		return all
	}
	before := letters()
	for i, k := range before {
		d.Press(k)
		if i == len(before)-1 {
			if d.M.Dialog() != nil {
				t.Error("the list goes on after its last tick")
			}
			break
		}
		if got := letters(); !reflect.DeepEqual(got, before) {
			t.Fatalf("after %s: letters %v, before %v", k, got, before)
		}
	}
	if n := d.Count(entry.KindSetting); n != len(before) {
		t.Errorf("%d of %d ticked", n, len(before))
	}
}
