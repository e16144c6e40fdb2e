package entry

import (
	"reflect"
	"testing"
	"time"
)

// filled is an event of a kind with every field set to something within its
// bounds, so that a field forgotten on the wire is seen.
func filled(t testing.TB, row Traits) Event {
	t.Helper()
	if row.Kind == KindAmend {
		return Amend{Target: Ref{Seq: 4}, Event: filled(t, rows[KindDeed]), Happened: at, Uncertain: 1500e6}
	}
	v := reflect.New(row.typ).Elem()
	fill(t, row, "", v)
	return v.Interface().(Event)
}

func fill(t testing.TB, row Traits, field string, v reflect.Value) {
	t.Helper()
	typ := v.Type()
	switch {
	case typ == reflect.TypeFor[UID]():
		v.SetString("00ff00ff00ff00ff")
		return
	case typ == reflect.TypeFor[When]():
		v.Set(reflect.ValueOf(When{at}))
		return
	case typ == reflect.TypeFor[Ref]():
		v.Set(reflect.ValueOf(Ref{Seq: 4}))
		return
	case isMaybe(typ):
		v.FieldByName("Known").SetBool(true)
		fill(t, row, field, v.FieldByName("Value"))
		return
	}
	switch v.Kind() {
	case reflect.Bool:
		v.SetBool(true)
	case reflect.String:
		v.SetString("a < b & “c”\u2028")
		if ws := choices[typ]; len(ws) > 0 {
			v.SetString(ws[len(ws)-1])
		}
	case reflect.Float64:
		l, ok := row.limitOf(field, typ)
		if !ok {
			t.Fatalf("%s: %s has no bounds", row.Kind, field)
		}
		v.SetFloat(min(l.most, 0.625))
	case reflect.Int, reflect.Int64:
		v.SetInt(3)
	case reflect.Slice:
		v.Set(reflect.MakeSlice(typ, 2, 2))
		fill(t, row, field, v.Index(0))
		fill(t, row, field, v.Index(1))
	case reflect.Map:
		e := reflect.New(typ.Elem()).Elem()
		fill(t, row, field, e)
		v.Set(reflect.MakeMap(typ))
		v.SetMapIndex(reflect.ValueOf("FeO").Convert(typ.Key()), e)
	case reflect.Pointer:
		v.Set(reflect.New(typ.Elem()))
		fill(t, row, field, v.Elem())
	case reflect.Struct:
		if at, ok := v.Addr().Interface().(*time.Time); ok {
			*at = time.Date(2026, 5, 9, 14, 28, 7, 0, time.UTC)
			return
		}
		for i := range typ.NumField() {
			name := wireName(typ.Field(i))
			if name == "" {
				t.Fatalf("%s: the field %s is not on the wire", row.Kind, typ.Field(i).Name)
			}
			fill(t, row, name, v.Field(i))
		}
	default:
		t.Fatalf("%s: %s is a %s", row.Kind, field, v.Kind())
	}
}
