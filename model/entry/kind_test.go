package entry

import (
	"errors"
	"fmt"
	"go/ast"
	"go/parser"
	"go/token"
	"reflect"
	"slices"
	"strconv"
	"strings"
	"testing"
)

// Every row answers every question, and stands once.
func TestTheTableAnswersEverything(t *testing.T) {
	seen := map[Kind]bool{}
	for _, row := range table {
		v := reflect.ValueOf(row)
		for i := range v.NumField() - 1 { // the last is the form
			if v.Field(i).IsZero() {
				t.Errorf("%s does not say its %s", row.Kind, v.Type().Field(i).Name)
			}
		}
		if row.typ == nil || row.decode == nil {
			t.Errorf("%s has no form", row.Kind)
			continue
		}
		ev := reflect.Zero(row.typ).Interface().(Event)
		if ev.Kind() != row.Kind || !TraitsOf(ev).Known() {
			t.Errorf("the row of %s holds the struct of %s", row.Kind, ev.Kind())
		}
		if seen[row.Kind] {
			t.Errorf("%s stands twice", row.Kind)
		}
		seen[row.Kind] = true
		if row.Moves&MovesNothing != 0 && row.Moves != MovesNothing {
			t.Errorf("%s moves nothing and something", row.Kind)
		}
		if row.Keyed&NoLonger != 0 && row.Keyed != NoLonger {
			t.Errorf("%s is no longer keyed and keyed", row.Kind)
		}
	}
}

// Every kind that is declared has a row.
func TestEveryKindHasARow(t *testing.T) {
	for _, k := range declaredKinds(t) {
		if !slices.Contains(Kinds(), k) {
			t.Errorf("%s has no row in the table", k)
		}
	}
}

func declaredKinds(t *testing.T) []Kind {
	t.Helper()
	f, err := parser.ParseFile(token.NewFileSet(), "event.go", nil, 0)
	if err != nil {
		t.Fatal(err)
	}
	var ks []Kind
	ast.Inspect(f, func(n ast.Node) bool {
		if v, ok := n.(*ast.ValueSpec); ok {
			for i, name := range v.Names {
				if strings.HasPrefix(name.Name, "Kind") {
					text, _ := strconv.Unquote(v.Values[i].(*ast.BasicLit).Value)
					ks = append(ks, Kind(text))
				}
			}
		}
		return true
	})
	if len(ks) < 38 {
		t.Fatalf("found only %d kinds", len(ks))
	}
	return ks
}

// Every number of every event has bounds, every bound and need a field.
func TestEveryNumberHasBounds(t *testing.T) {
	for _, row := range table {
		if row.Kind == KindAmend { // is checked as what it puts in place
			continue
		}
		used := map[string]bool{}
		eachField(row.typ, "", func(field string, typ reflect.Type) {
			used[field] = true
			switch typ.Kind() {
			case reflect.Float64, reflect.Int, reflect.Int64, reflect.Uint64:
				if _, ok := row.limitOf(field, typ); !ok && typ != reflect.TypeFor[uint64]() {
					t.Errorf("%s: %s has no bounds", row.Kind, field)
				}
			}
		})
		for field := range row.limits {
			if !used[field] {
				t.Errorf("%s: bounds for %s, which it does not have", row.Kind, field)
			}
		}
		for _, field := range row.needs {
			if !used[field] {
				t.Errorf("%s needs %s, which it does not have", row.Kind, field)
			}
		}
	}
}

// eachField visits every field on the wire, at any depth.
func eachField(t reflect.Type, field string, visit func(string, reflect.Type)) {
	visit(field, t)
	switch {
	case isMaybe(t):
		f, _ := t.FieldByName("Value")
		eachField(f.Type, field, visit)
		return
	case t.Kind() == reflect.Slice, t.Kind() == reflect.Map, t.Kind() == reflect.Pointer:
		eachField(t.Elem(), field, visit)
	case t.Kind() == reflect.Struct:
		for i := range t.NumField() {
			if name := wireName(t.Field(i)); name != "" {
				eachField(t.Field(i).Type, name, visit)
			}
		}
	}
}

func TestCheckFindsWhatIsOutOfBounds(t *testing.T) {
	for _, c := range []struct {
		ev    Event
		field string // empty: within bounds
	}{
		{Dip{BelowRim: Some(Centimetre(12))}, ""},
		{Dip{BelowRim: Some(Centimetre(1200))}, "below_rim_cm"},
		{Charge{Parts: Parts{{What: Ore, Mass: Some(Kilogram(1900))}}}, "mass_kg"},
		{Charge{Parts: Parts{{What: "rock"}}}, "what"},
		{Charge{}, ""},
		{LotStored{Lot: Lot{Name: "wood", Mass: Some(Kilogram(1900)), Moisture: Some(Share(1.2))}}, ""},
		{LotStored{}, "lot"},
		{Note{}, "text"},
		{Note{Text: strings.Repeat("x", MaxText+1)}, "text"},
		{Note{Text: "\xff"}, "text"},
		{PhaseSet{Phase: "tea"}, "phase"},
		{Amend{Target: Ref{Seq: 1}, Event: Note{Text: "\xff"}}, "text"},
		{Amend{}, "target"},
		{Strike{Target: Ref{Local: "k7"}}, ""},
		{Unknown{Name: "moon"}, ""},
		{nil, ""},
	} {
		err := Check(c.ev)
		var b *BoundsError
		switch {
		case c.field == "" && err != nil:
			t.Errorf("%+v: %v", c.ev, err)
		case c.field != "" && (!errors.As(err, &b) || b.Field != c.field):
			t.Errorf("%+v: got %v, want %s", c.ev, err, c.field)
		}
	}
	want := "dip: below_rim_cm is 1200; it may be -100 to 1000"
	if got := fmt.Sprint(Check(Dip{BelowRim: Some(Centimetre(1200))})); got != want {
		t.Errorf("got %q, want %q", got, want)
	}
}

// A word in no list is a slip where it is keyed, and one of a newer version where it is taken
// over from what was kept, as light takes lots over; a number out of bounds is a slip there too.
func TestAWordOfANewerVersionIsTakenOver(t *testing.T) {
	newer := Light{Lots: []Lot{{Name: "pond", What: Ore, Signs: []OreSign{SignHeavy, "glows"}, Assay: &Assay{Basis: "as melted"}}}}
	if err := Check(newer); err == nil {
		t.Error("keyed, it is taken for a word of the list")
	}
	if err := CheckKept(newer); err != nil {
		t.Error(err)
	}
	var said []string
	for _, w := range NewerWords(newer) {
		said = append(said, w.Field+" "+w.Given)
	}
	if got := strings.Join(said, ", "); got != "basis as melted, signs glows" {
		t.Errorf("not understood: %s", got)
	}
	newer.Lots[0].Mass = Some(Kilogram(1e7))
	if err := CheckKept(Amend{Target: Ref{Seq: 1}, Event: newer}); err == nil {
		t.Error("ten thousand tons of it are taken over")
	}
}

// What is in a book is read, whatever it says.
func TestBoundsAreNotAskedInReading(t *testing.T) {
	line := `{"v":1,"stream":"s","seq":1,"happened":"2026-05-09T14:32:05.120Z","kind":"dip","event":{"below_rim_cm":1e6}}`
	e, err := Decode([]byte(line))
	if err != nil || e.Event != (Dip{BelowRim: Some(Centimetre(1e6))}) {
		t.Errorf("got %+v, %v", e.Event, err)
	}
}

// What the tests write is within bounds, so that bounds and fields agree.
func TestTheFullEventsAreWithinBounds(t *testing.T) {
	for _, e := range full(t) {
		if err := Check(e.Event); err != nil {
			t.Error(err)
		}
	}
}
