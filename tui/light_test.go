package tui_test

import (
	"math"
	"strings"
	"testing"
	"time"

	"chargehand/model/entry"
	"chargehand/model/figure"
	"chargehand/tui/desk"
	"chargehand/tui/screen"
	"chargehand/tui/theme"
	"chargehand/tui/words"
)

// down goes to a row of the form before light, by its label.
func down(d *desk.Desk, to string) {
	d.Press("pgdown")
	for range 20 {
		d.Press("down")
		if strings.Contains(d.Picture(), "> "+to) || strings.Contains(d.Picture(), "▸ "+to) {
			return
		}
	}
	d.Shows("> " + to)
}

// The form opens at its top, enter does what the keys line says, and the top and the
// last row lie beside each other.
func TestTheFormBeginsAtItsTop(t *testing.T) {
	d := desk.Sit(t)
	d.Press("r")
	d.Shows("> begin with")
	d.Shows("enter " + words.DoNextRow)
	d.Press("enter")
	d.Shows("> name of the furnace")
	d.Press("up", "up")
	d.Shows("enter " + words.DoLight)
	d.Press("enter")
	d.Shows("numbers are guesses, never measured here")
	d.Press("n")
	d.Answers(words.NothingDone)
	if d.M.Running().Is() || d.M.Active() != screen.Light {
		t.Fatal("no is not yes")
	}
	d.Press("enter", "y")
	if !d.M.Running().Is() {
		t.Fatal("not lit")
	}
}

// A weight typed a row too far down is no name of a measure.
func TestAMeasureIsNotNamedByANumber(t *testing.T) {
	d := desk.Sit(t)
	d.Press("r")
	down(d, "ore goes in by")
	d.Press("backspace", "backspace", "backspace", "backspace", "backspace")
	d.Write("0.55")
	d.Press("pgdown", "enter")
	d.Answers(words.NameIsNumber)
	if d.M.Running().Is() {
		t.Error("lit with a measure called 0.55")
	}
}

// Who measures and finds the very number that was guessed has it from measuring.
func TestAGuessThatIsTypedIsNone(t *testing.T) {
	d := desk.Sit(t)
	d.Press("r")
	for row, number := range map[string]string{"bore at the tuyere": "25", "mark above": "50", "charcoal in one": "1.9"} {
		down(d, row)
		d.Write(number)
	}
	d.Press("pgdown", "enter", "y")
	l := d.M.Running().Light()
	for _, m := range l.Measures {
		if want := m.What != entry.Charcoal; m.Guessed != want {
			t.Errorf("%s of %v kg: a guess %v, want %v", m.Name, m.Mass.Value, m.Guessed, want)
		}
	}
	if l.Furnace.Bore.Value != 25 || l.Furnace.Stack.Value != 50 || l.Furnace.Guessed {
		t.Errorf("%+v: still called a guess", l.Furnace)
	}
}

// Who comes back to a number types it anew; who left it half a word goes on with it.
func TestANumberComeBackToIsTypedAnew(t *testing.T) {
	d := desk.Sit(t)
	d.Press("r")
	down(d, "bore at the tuyere")
	d.Write("28")
	d.Press("up")
	d.Write("clay ")
	d.Press("down")
	d.Write("30")
	d.Press("up")
	d.Write("one")
	d.Press("pgdown", "enter", "y")
	f := d.M.Running().Light().Furnace
	if f.Bore.Value != 30 || f.Name != "clay one" {
		t.Errorf("bore %v, name %q", f.Bore.Value, f.Name)
	}
}

// A fire can be lit in the past, and what was done since entered after it.
func TestLitInThePast(t *testing.T) {
	d := desk.Sit(t)
	now := d.At.Wall
	d.Press("r")
	down(d, "lit at")
	d.Write(now.Add(-80 * time.Minute).Format("15:04"))
	d.Press("pgdown", "enter", "y")
	s := d.M.Running()
	if got := s.Reading().At.Round(time.Minute); got != 80*time.Minute {
		t.Fatalf("lit %v ago", got)
	}
	first, _ := s.First()
	if first.Uncertain != 30*time.Second {
		t.Errorf("the time is known to %v", first.Uncertain)
	}
	at := func(ago time.Duration) string { return now.Add(-ago).Format("15:04") }
	d.Press("o", "e")
	d.Write(at(75 * time.Minute))
	d.Press("enter", "h")
	d.Press("o", "e")
	d.Write(at(40 * time.Minute))
	d.Press("enter", "f")
	d.Write("6")
	d.Press("enter")
	d.Press("o", "e")
	d.Write(at(20 * time.Minute))
	d.Press("enter", "v")
	r := d.M.Running().Reading()
	if r.Phase != entry.MainBurn || math.Abs(burnt(r)-6*1.9) > 1e-9 {
		t.Errorf("%s, %v kg of charcoal", r.Phase, burnt(r))
	}
	d.Press("o", "e")
	d.Write(at(85 * time.Minute))
	d.Press("enter")
	d.Answers("lit at")
}

// What a smelt was lit with is put right afterwards, while it burns, and all follows;
// taken back it is as before.
func TestTheLightIsPutRight(t *testing.T) {
	d := desk.Sit(t)
	d.Press("r")
	down(d, "your initials")
	d.Write("MK")
	d.Press("pgdown", "enter", "y")
	d.Wait(10 * time.Minute)
	d.Press("f", "f", "c", "s")
	was := d.M.Running().Light()
	kg := burnt(d.M.Running().Reading())
	d.Press("o", "v", "l")
	d.Shows("> " + words.FormStarter)
	down(d, "charcoal in one")
	d.Write("2,4")
	down(d, "bore")
	d.Write("30")
	down(d, "tuyere above")
	d.Write("18")
	down(d, "from the lot")
	d.Write("beech")
	lit := d.M.Running().Reading().Lit
	down(d, "lit at")
	d.Write(lit.Add(-15 * time.Minute).Format("15:04"))
	d.Press("pgdown", "enter")
	l, r := d.M.Running().Light(), d.M.Running().Reading()
	if d.M.Active() != screen.Fire {
		t.Errorf("then on %s", d.M.Active())
	}
	if l.Measures[0].Mass.Value != 2.4 || l.Measures[0].Guessed || l.Furnace.Bore.Value != 30 || l.Furnace.TuyereBase.Value != 18 || l.Furnace.Guessed {
		t.Errorf("%+v %+v", l.Furnace, l.Measures)
	}
	if l.UID != was.UID || len(l.Lots) != 1 || l.Lots[0].Name != "beech" || l.Recipe[0].Lot != "beech" || l.Furnace.Rim != was.Furnace.Rim {
		t.Errorf("%+v %+v", l.Lots, l.Recipe)
	}
	if want := kg * 2.4 / 1.9; burnt(r) < want-1e-9 || burnt(r) > want+1e-9 {
		t.Errorf("%v kg of charcoal, want %v", burnt(r), want)
	}
	if moved := lit.Sub(r.Lit); moved <= 15*time.Minute || moved > 16*time.Minute {
		t.Errorf("lit %v earlier", moved)
	}
	d.Press("v", "b", "home", "a")
	down(d, "charcoal goes in by the")
	d.Write("basket")
	d.Press("pgdown", "enter")
	d.Answers(words.MeasureCounted("bucket"))
	d.Press("esc", "esc")
	d.Wait(5 * time.Minute)
	d.Press("v", "b", "home", "a")
	down(d, "lit at")
	d.Write(d.At.Wall.Add(-time.Minute).Format("15:04"))
	d.Press("pgdown", "enter")
	d.Answers("the fire was lit before that")
	d.Press("esc")
	d.Press("v", "b", "home", "o")
	if now := d.M.Running(); now.Light().Furnace.Bore != was.Furnace.Bore || !now.Reading().Lit.Equal(lit) || burnt(now.Reading()) != kg {
		t.Errorf("taken back: %+v", now.Light())
	}
}

// Untouched the form changes nothing, whatever the smelt was lit with.
func TestAnUntouchedLightIsNotAmended(t *testing.T) {
	d := desk.Smelting(t, theme.Theme{})
	n := d.Count(entry.KindAmend)
	d.Press("v", "b", "home", "enter", "pgdown", "enter")
	d.Answers(words.LightUnchanged)
	if d.Count(entry.KindAmend) != n || d.M.Active() != screen.Book {
		t.Errorf("%d amendments, on %s", d.Count(entry.KindAmend)-n, d.M.Active())
	}
}

// burnt is the charcoal charged so far in kg.
func burnt(r *figure.Reading) float64 { return r.Figure(figure.CharcoalCharged).P50 }

// A log that was brought in without a day gets one in the form; its rows come along, and
// what is entered afterwards goes by that day.
func TestALogIsGivenItsDay(t *testing.T) {
	undated := time.Date(1970, 1, 1, 9, 30, 0, 0, time.UTC)
	book := desk.Memory{}
	for i, ev := range []entry.Event{
		entry.Light{UID: "log", Imported: true, Undated: true}, entry.Charge{Parts: entry.Parts{{What: entry.Charcoal, Mass: entry.Some(entry.Kilogram(2))}}}, entry.Extract{},
	} {
		book.Keep(entry.Entry{Version: entry.Version, Stream: "undated-a", Seq: uint64(i + 1), Happened: undated.Add(time.Duration(i) * time.Hour), Event: ev})
	}
	d := desk.SitAt(t, book, desk.Noon, theme.Theme{})
	d.Press("l", "enter", "v", "b", "home", "a")
	down(d, "lit on")
	d.Write("2016-11-30")
	d.Press("pgdown", "enter")
	s := d.M.Looked()
	if got := s.Reading().Lit.Format("2006-01-02 15:04"); got != "2016-11-30 09:30" || s.Light().Undated || !s.Light().Imported {
		t.Fatalf("lit %s, %+v", got, s.Light())
	}
	if l, _ := s.Line(2); s.Wall(l).Format("2006-01-02 15:04") != "2016-11-30 10:30" {
		t.Errorf("the charge stands at %v", s.Wall(l))
	}
	d.Press("v", "f", "o", "e")
	d.Write("11:00")
	d.Press("enter", "p")
	s = d.M.Looked()
	l, _ := s.Last()
	for line := range s.Of(entry.KindPoke) {
		l = line
	}
	if got := s.Wall(l).Format("2006-01-02 15:04"); got != "2016-11-30 11:00" {
		t.Errorf("what was entered late stands at %s: %s", got, d.Said())
	}
}

// A furnace whose tuyere nobody measured above its floor lacks a number: it is asked for,
// since how high the slag stands goes by it.
func TestTheTuyereAboveTheFloorIsAskedFor(t *testing.T) {
	for _, c := range []struct{ base, says string }{{"", "measure floor to tuyere"}, {"15", words.FormNoneGuessed}} {
		d := desk.Sit(t)
		d.KeyStores(desk.Bucket, desk.Scoop)
		d.Press("v", "u")
		d.Script("nReed Hollow\n25\n\n50\n60\n" + c.base + "\n5\n20\n20\n")
		d.Press("enter", "enter")
		d.Wait(2 * time.Second)
		d.Shows(c.says)
	}
}

// A bucket that was weighed again at the last fire is offered as it was found, unless it was
// weighed at home since.
func TestABucketWeighedAtTheFireIsOfferedSo(t *testing.T) {
	d := desk.Sit(t)
	d.KeyStores("ka1bucket\n2\n", desk.Scoop)
	d.KeyFurnace()
	d.Press("enter", "pgdown", "enter")
	d.Wait(time.Minute)
	d.Press("f")
	d.Wait(time.Minute)
	d.Press("o", "r", "m", "b")
	d.Write("1.8")
	d.Press("enter", "w", "o", "k", "y", "enter")
	d.Wait(2 * time.Second)
	d.Press("v", "a", "r")
	d.Wait(2 * time.Second)
	d.Shows("charcoal in one                      1.8  kg")
	d.Press("esc", "v", "t")
	d.Script("kb1.7\n")
	d.Press("v", "a", "r")
	d.Wait(2 * time.Second)
	d.Shows("charcoal in one                      1.7  kg")
}

// A furnace of which only an imported log is known, by weight, is lit as any other: the
// usual measures stand in the form as guesses.
func TestAFurnaceOfALogWithoutMeasuresIsLit(t *testing.T) {
	log := []entry.Entry{
		{Version: entry.Version, Stream: "2026-04-01-oldbank-a", Seq: 1, Happened: desk.Noon.Wall.AddDate(0, -1, 0), Event: entry.Light{
			UID: "00000000000000aa", Imported: true, Furnace: entry.Furnace{Name: "Old Bank", Bore: entry.Some(entry.Centimetre(25)), Stack: entry.Some(entry.Centimetre(50))},
		}},
		{Version: entry.Version, Stream: "2026-04-01-oldbank-a", Seq: 2, Happened: desk.Noon.Wall.AddDate(0, -1, 0).Add(time.Hour), Event: entry.Charge{
			Parts: entry.Parts{{What: entry.Charcoal, Mass: entry.Some(entry.Kilogram(1.8))}},
		}},
	}
	d := desk.SitAt(t, desk.Memory{log[0].Stream: log}, desk.Noon, theme.Theme{})
	d.Press("r")
	d.Shows("as in 2026-04-01-oldbank-a")
	d.Press("pgdown", "enter", "y")
	l := d.M.Running().Light()
	if l.Furnace.Name != "Old Bank" || len(l.Measures) != 2 || !l.Measures[0].Guessed {
		t.Fatalf("lit with %+v: %s", l, d.Said())
	}
}
