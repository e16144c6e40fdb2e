package tui_test

import (
	"strings"
	"testing"
	"time"

	"chargehand/model/entry"
	"chargehand/tui"
	"chargehand/tui/desk"
	"chargehand/tui/screen"
	"chargehand/tui/theme"
	"chargehand/tui/words"
)

// killed is another run of the program on the book as it stands, without a word to the
// first.
func killed(d *desk.Desk) *desk.Desk {
	at := desk.Later(d.At, time.Minute)
	at.Boot, at.Mono = at.Boot+"'", time.Minute
	return desk.SitAt(d.T, d.Book, at, theme.Theme{})
}

// What is half typed comes back after a kill, a second after it was typed: the words of a
// note, a number, each answered step of an act of several steps, the rows of the form.
// What was kept, or called off, does not.
func TestHalfTypedWorkOutlivesTheProgram(t *testing.T) {
	d := desk.Practising(t)
	d.Press("n")
	d.Write("wind from")
	d.Wait(time.Second)
	d = killed(d)
	d.Press("g")
	d.Answers(`half typed 12:00: note "wind from"`)
	d.Press("n")
	d.Shows("go on, or x")
	d.Write(" the west")
	d.Press("enter")
	if d.Last() != entry.Event(entry.Note{Text: "wind from the west"}) {
		t.Errorf("%#v", d.Last())
	}
	d.Wait(time.Second)
	d = killed(d)
	d.Press("g", "n")
	if f := d.M.Dialog().(screen.Field); f.Input.Text() != "" {
		t.Errorf("a note that was kept comes back: %q", f.Input.Text())
	}
	d.Press("esc", "b", "7", "2", "0")
	d.Wait(time.Second)
	d = killed(d)
	d.Press("g", "b")
	d.Shows("half typed")
	d.Press("enter")
	if d.Last() != entry.Event(entry.Blast{Volume: entry.Some(entry.LitrePerMinute(720))}) {
		t.Errorf("%#v", d.Last())
	}
	d.Press("b", "m", "o", "5", "0", "enter", "3", "0", "enter", "4", "0")
	d.Wait(time.Second)
	d = killed(d)
	d.Press("g", "b", "m", "o", "enter", "enter", "enter")
	b, _ := d.Last().(entry.Blast)
	if b.Read.Pipe.Value != 50 || b.Read.Hole.Value != 30 || b.Read.Pressure.Value != 40 {
		t.Errorf("%#v is open, %#v kept", d.M.Dialog(), d.Last())
	}
	d.Press("n")
	d.Write("called off")
	d.Wait(time.Second)
	d.Press("esc")
	d = killed(d)
	d.Press("g", "n")
	if f := d.M.Dialog().(screen.Field); f.Input.Text() != "" {
		t.Errorf("what was called off comes back: %q", f.Input.Text())
	}
}

// A number that an act ended, a list behind a number that closed by itself, a late time
// given as minutes ago: all of it comes back as it was meant.
func TestWhatAnActEndedComesBack(t *testing.T) {
	d := desk.Practising(t)
	d.Wait(30 * time.Minute)
	d.Press("b", "7", "2", "c")
	d.Answers(words.NumberNotKept(words.DoBlast, "72"))
	d.Press("b")
	d.Shows("half typed")
	d.Press("esc", "w", "m", "b", "2", "enter")
	d.Wait(screen.Unattended + time.Second)
	d.Press("w", "m", "b")
	d.Shows("half typed")
	d.Press("enter", "w")
	if w, _ := d.Last().(entry.Weigh); w.Mass != 2 {
		t.Errorf("%#v", d.Last())
	}
	d.Press("o", "e", "1", "0", "enter")
	d.Wait(2 * screen.Unattended)
	d.Wait(5 * time.Minute)
	d.Press("o", "e")
	d.Shows("12:20")
	d.Press("enter", "n")
	d.Write("then")
	d.Press("enter")
	if l, _ := d.M.Running().Last(); d.M.Running().Wall(l).Format("15:04") != "12:20" {
		t.Errorf("entered at %v", d.M.Running().Wall(l))
	}
	d.Press("n")
	d.Write("max")
	d.Wait(2 * screen.Readable)
	d.Press("n", "x") // it clears, and gives back
	d.Answers("")
	d.Press("backspace")
	d.Write("imum")
	d.Press("enter")
	if d.Last() != entry.Event(entry.Note{Text: "maximum"}) {
		t.Errorf("%#v", d.Last())
	}
}

// The rows of the form come back after a kill and after a look at the help, not after esc
// and not once it is lit.
func TestTheFormComesBack(t *testing.T) {
	d := desk.Sit(t)
	d.Press("r")
	for range 2 {
		d.Press("up")
	}
	d.Write("7")
	d.Wait(time.Second)
	if n := len(d.Book[entry.House]); n == 0 {
		t.Fatal("nothing of it is in the book")
	}
	d.Press("pgdown", "down", "right") // the starter that was chosen is part of it
	d.Wait(time.Second)
	chosen := strings.Split(strings.SplitN(d.Picture(), words.FormStarter, 2)[1], "2 of")[0]
	d = killed(d)
	d.Press("r")
	if got := strings.Split(strings.SplitN(d.Picture(), words.FormStarter, 2)[1], "2 of")[0]; got != chosen {
		t.Errorf("begins with %q, was left with %q", got, chosen)
	}
	d.Press("pgdown", "down", "left")
	name := func(d *desk.Desk) {
		d.Press("pgdown", "down", "down")
		d.Write("Sedge")
	}
	name(d)
	d.Wait(time.Second)
	d = killed(d)
	d.Press("r")
	d.Shows("Sedge")
	d.Answers("half typed 12:0")
	d.Send(tui.Pressed{Key: desk.KeyMsg("f1"), At: desk.Later(d.At, time.Second)})
	d.At = desk.Later(d.At, time.Second)
	d.Press("esc")
	d.Shows("Sedge")
	d.Press("esc")
	d.Answers("what was typed in the form is dropped")
	d.Press("r")
	if f := d.Picture(); strings.Contains(f, "Sedge") {
		t.Error("what was called off comes back")
	}
	name(d)
	d.Press("pgdown", "enter", "y")
	if n := d.M.Running().Light().Furnace.Name; n != "Sedge" {
		t.Errorf("lit %q", n)
	}
	d = killed(d)
	d.Press("r")
	if said, _ := d.M.Answer(); strings.Contains(said, "half typed") {
		t.Error("a form that was lit comes back")
	}
}

// A smelt that goes on says what was left half typed in it, the last of it first and on whatever
// screen, and how much more there is; of another smelt and of the house it says nothing.
func TestWhatIsHalfTypedIsSaid(t *testing.T) {
	at := func(minute int) time.Time { return desk.Noon.Wall.Add(time.Duration(minute) * time.Minute) }
	note := tui.Half{On: screen.Fire, Smelt: "a", Field: "note", Text: "wind", At: at(1)}
	blast := tui.Half{On: screen.Fire, Smelt: "a", Field: "blast", Text: "72", At: at(3)}
	bloom := tui.Half{On: screen.Account, Smelt: "a", Field: "bloom", Text: "4.", At: at(9)}
	other := tui.Half{On: screen.Fire, Smelt: "b", Field: "note", Text: "rain", At: at(20)}
	house := tui.Half{On: screen.Stores, Field: "lot", Text: "po", At: at(30)}
	for _, c := range []struct {
		left []tui.Half
		want string
	}{
		{nil, "this is a"},
		{[]tui.Half{other, house}, "this is a"},
		{[]tui.Half{note, other}, `this is a; half typed 12:01: note "wind"`},
		{[]tui.Half{blast, note}, `this is a; half typed 12:03: blast "72" and 1 more`},
		{[]tui.Half{note, bloom, blast, house}, `this is a; half typed 12:09: bloom "4." and 2 more`},
	} {
		if got := tui.OpenedWith("a", c.left...); got != c.want {
			t.Errorf("%+v: %q, want %q", c.left, got, c.want)
		}
	}
}
