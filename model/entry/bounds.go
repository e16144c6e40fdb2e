package entry

import (
	"fmt"
	"math"
	"reflect"
	"slices"
	"strconv"
	"strings"
	"unicode/utf8"
)

// A number beyond its bounds is a slip of the pen (grams for kilograms, two
// figures run together), a word that is not in its list a slip of the program.
// Check finds them when an event is keyed or taken from a log. What is in a
// book was kept, and is read whatever it says.

// MaxText bounds one text of an event, in bytes.
const MaxText = 16 << 10

// limit is the least and the most of a number.
type limit struct{ least, most float64 }

func (l limit) takes(v float64) bool { return v >= l.least && v <= l.most }

// unitLimits are the bounds of every number of a unit, where its kind gives no
// others: what a small furnace, its stores and its forge can show.
var unitLimits = map[reflect.Type]limit{
	reflect.TypeFor[Kilogram]():       {0, 1000},
	reflect.TypeFor[Centimetre]():     {-100, 1000}, // the burden can sink below the tuyere
	reflect.TypeFor[Millimetre]():     {0, 10_000},
	reflect.TypeFor[Litre]():          {0, 10_000},
	reflect.TypeFor[LitrePerMinute](): {0, 100_000},
	reflect.TypeFor[MetrePerSecond](): {0, 300},
	reflect.TypeFor[PerMinute]():      {0, 1000},
	reflect.TypeFor[Celsius]():        {-100, 3000},
	reflect.TypeFor[Pascal]():         {-1000, 100_000},
	reflect.TypeFor[Degree]():         {-90, 90},
	reflect.TypeFor[Metre]():          {-500, 9000},
	reflect.TypeFor[Share]():          {0, 1},
	reflect.TypeFor[Count]():          {0, 1000},
	reflect.TypeFor[KgPerCubicM]():    {0, 10_000},
	reflect.TypeFor[CubicMetre]():     {0, 1000},
	reflect.TypeFor[Minute]():         {0, 100_000},
	reflect.TypeFor[Hour]():           {0, 10_000},
	reflect.TypeFor[Percent]():        {0, 100},
	reflect.TypeFor[PPM]():            {0, 1e6},
	reflect.TypeFor[Money]():          {-1e9, 1e9}, // what was earned is paid the other way
	reflect.TypeFor[Number]():         {-1e12, 1e12},
}

// choices are the words that a type of words takes. Empty is always taken: not
// said. A type without a list takes any text.
var choices = map[reflect.Type][]string{
	reflect.TypeFor[BlastState]():   list(BlastOn, BlastOff),
	reflect.TypeFor[AirMeter]():     list(OrificePlate, PitotTube, VaneAnemometer),
	reflect.TypeFor[Phase]():        list(Prepared, Preheat, Filling, MainBurn, OreOff, BurnsDown, Extracted, Closed),
	reflect.TypeFor[LevelRemark]():  list(NotToMark, Heaped, ToMark),
	reflect.TypeFor[LookAt]():       list(AtPeep, AtFlame, AtSound, AtSlag, AtSmell, AtTopGas),
	reflect.TypeFor[Weighed]():      list(WeighMeasure, WeighBloom, WeighSlag, WeighFragments, WeighLot, WeighCharcoalLeft, WeighWall),
	reflect.TypeFor[Reweighed]():    list(Wetter, Fuller, Other),
	reflect.TypeFor[SlagPractice](): list(SlagBowl, SlagPit, SlagTap, SlagRunning),
	reflect.TypeFor[SlagWhere]():    list(SlagOfTap, SlagOfFurnace),
	reflect.TypeFor[PieceState]():   list(Hot, Cold, Compacted),
	reflect.TypeFor[LeftIn]():       list(LeftSlag, LeftBloom, LeftEmbers),
	reflect.TypeFor[StepDoes]():     list(StepFill, StepCharcoal, StepCharge, StepIronSlag, StepLastOre, StepBurnDown),
	reflect.TypeFor[Material]():     list(LotOre, LotCharcoal, LotWood, LotSand, LotClay, LotIronSlag, LotFragments, LotFlux),
	reflect.TypeFor[Does](): list(Dug, Bought, Given, Washed, PickedOver, Roasted, Crushed, Broken, Sieved, Burnt, Seasoned, Dried, Mixed,
		CountedAgain, Sold, GivenAway, Spoilt),
	reflect.TypeFor[Basis]():        list(BasisMeasured, BasisEstimated, BasisAssumed, BasisGuessed, BasisUnknown),
	reflect.TypeFor[AssayBasis]():   list(AsDug, AsDried, AsRoasted, AsIgnited, Normalised),
	reflect.TypeFor[BuiltWhy]():     list(Built, Repaired, Worn, Measured),
	reflect.TypeFor[PieceKind]():    list(BloomPiece, HalfPiece, Billet, Bar, Finished, CropEnd),
	reflect.TypeFor[PieceEnd]():     list(EndSold, EndGiven, EndSample, EndScrap, EndLost),
	reflect.TypeFor[FuelKind]():     list(ForgeCharcoal, ForgeCoal, ForgeGas),
	reflect.TypeFor[Forged]():       list(Consolidated, Folded, Welded, DrawnOut, FinishedOff),
	reflect.TypeFor[IncidentWhat](): list(IncidentBurn, IncidentUnwell, IncidentAlarm, IncidentFire, IncidentNearMiss, IncidentOther),
	reflect.TypeFor[WallWhat]():     list(WallCrack, WallBurnThrough, WallSlump, WallPatched),
	reflect.TypeFor[OreSign]():      list(SignDarkRed, SignBrown, SignBlack, SignSticky, SignGritty, SignHeavy, SignLight, SignMagnetic, SignNoMagnet),
	reflect.TypeFor[What]():         list(Charcoal, Ore, SeedSlag, ReturnedSlag, Fragments, Flux),
}

func list[T ~string](ws ...T) []string {
	out := make([]string, len(ws))
	for i, w := range ws {
		out[i] = string(w)
	}
	return out
}

// Choices are the words of one list, in its order.
func Choices[T ~string]() []T {
	var ws []T
	for _, w := range choices[reflect.TypeFor[T]()] {
		ws = append(ws, T(w))
	}
	return ws
}

// BoundsError says which field of an event is out of bounds, and how.
type BoundsError struct {
	Kind        Kind
	Field       string   // its name on the wire
	Given       string   // what it says; empty where it says nothing and must
	Least, Most float64  // the bounds of a number
	Words       []string // the words that it takes
	Why         string   // what else is wrong
}

func (e *BoundsError) Error() string {
	at := fmt.Sprintf("%s: %s", e.Kind, e.Field)
	switch {
	case e.Why != "":
		return at + " " + e.Why
	case e.Given == "":
		return at + " is missing"
	case len(e.Words) > 0:
		return fmt.Sprintf("%s is %q; it may be %s", at, e.Given, strings.Join(e.Words, ", "))
	}
	return fmt.Sprintf("%s is %s; it may be %s to %s", at, e.Given, plainNumber(e.Least), plainNumber(e.Most))
}

func plainNumber(v float64) string { return strconv.FormatFloat(v, 'f', -1, 64) }

// Check gives a field of an event that is out of bounds, as a *BoundsError, or nil: a
// number or a text before a word. Events of a newer version pass.
func Check(ev Event) error {
	found, newer := check(ev)
	if found == nil && len(newer) > 0 {
		return newer[0]
	}
	return orNil(found)
}

// CheckKept is the same of an event that takes over what was kept, as light does of the
// lots: a word that is in no list may then be one of a newer version, and passes.
func CheckKept(ev Event) error {
	found, _ := check(ev)
	return orNil(found)
}

// NewerWords are the words of an event that are in no list: those of a newer version, by
// which nothing is reckoned here. Each says in which field it stands.
func NewerWords(ev Event) []*BoundsError {
	_, newer := check(ev)
	return newer
}

func orNil(found *BoundsError) error {
	if found == nil {
		return nil
	}
	return found
}

// check gives the first field that is out of bounds, nil for none, and, apart from it, the
// words that are in no list.
func check(ev Event) (found *BoundsError, newer []*BoundsError) {
	t := TraitsOf(ev)
	if !t.Known() {
		return nil, nil
	}
	if a, ok := ev.(Amend); ok {
		if a.Target == (Ref{}) {
			return &BoundsError{Kind: KindAmend, Field: "target"}, nil
		}
		return check(a.Event)
	}
	c := checker{kind: t.Kind, form: t.form}
	v := reflect.ValueOf(ev)
	for i := range v.NumField() {
		if name := wireName(v.Type().Field(i)); slices.Contains(t.needs, name) && v.Field(i).IsZero() {
			return &BoundsError{Kind: t.Kind, Field: name}, nil
		}
	}
	c.walk("", v)
	return c.found, c.newer
}

// checker walks an event and stops at the first field that is out of bounds.
type checker struct {
	kind  Kind
	form  form
	found *BoundsError
	newer []*BoundsError // words in no list, before found
}

func (c *checker) walk(field string, v reflect.Value) {
	if c.found != nil {
		return
	}
	if q, ok := v.Interface().(interface{ trouble() string }); ok {
		if why := q.trouble(); why != "" {
			c.found = &BoundsError{Kind: c.kind, Field: field, Why: why}
			return
		}
	}
	switch v.Kind() {
	case reflect.Float64:
		c.number(field, v.Type(), v.Float())
	case reflect.Int, reflect.Int64:
		c.number(field, v.Type(), float64(v.Int()))
	case reflect.String:
		c.text(field, v.Type(), v.String())
	case reflect.Slice:
		for i := range v.Len() {
			c.walk(field, v.Index(i))
		}
	case reflect.Map:
		for it := v.MapRange(); it.Next(); {
			c.text(field, v.Type().Key(), it.Key().String())
			c.walk(field, it.Value())
		}
	case reflect.Pointer:
		if !v.IsNil() {
			c.walk(field, v.Elem())
		}
	case reflect.Struct:
		c.fields(field, v)
	}
}

func (c *checker) fields(field string, v reflect.Value) {
	if known := v.FieldByName("Known"); known.IsValid() && isMaybe(v.Type()) {
		if known.Bool() {
			c.walk(field, v.FieldByName("Value"))
		}
		return
	}
	for i := range v.NumField() {
		if name := wireName(v.Type().Field(i)); name != "" {
			c.walk(name, v.Field(i))
		}
	}
}

func (c *checker) number(field string, t reflect.Type, v float64) {
	if math.IsNaN(v) || math.IsInf(v, 0) {
		c.found = &BoundsError{Kind: c.kind, Field: field, Why: "is not a number"}
		return
	}
	if l, ok := c.form.limitOf(field, t); ok && !l.takes(v) {
		c.found = &BoundsError{Kind: c.kind, Field: field, Given: plainNumber(v), Least: l.least, Most: l.most}
	}
}

func (c *checker) text(field string, t reflect.Type, s string) {
	ws, listed := choices[t]
	most := MaxText
	if l, ok := c.form.limits[field]; ok {
		most = int(l.most)
	}
	switch {
	case len(s) > most:
		c.found = &BoundsError{Kind: c.kind, Field: field, Why: fmt.Sprintf("is %d bytes long; it may be %d", len(s), most)}
	case !utf8.ValidString(s):
		c.found = &BoundsError{Kind: c.kind, Field: field, Why: "holds bytes that are no text"}
	case listed && s != "" && !slices.Contains(ws, s):
		c.newer = append(c.newer, &BoundsError{Kind: c.kind, Field: field, Given: s, Words: ws})
	}
}

// limitOf is the bounds of a number: those of its kind, else those of its unit.
func (f form) limitOf(field string, t reflect.Type) (limit, bool) {
	if l, ok := f.limits[field]; ok {
		return l, true
	}
	l, ok := unitLimits[t]
	return l, ok
}

// isMaybe tells whether a type is a Maybe of some unit.
func isMaybe(t reflect.Type) bool {
	return t.PkgPath() == reflect.TypeFor[Ref]().PkgPath() && strings.HasPrefix(t.Name(), "Maybe[")
}
