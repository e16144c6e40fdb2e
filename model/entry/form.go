package entry

import (
	"encoding/json"
	"reflect"
	"strings"
)

// form is the struct of a kind: how it is read, and the bounds of its fields
// beyond those that its units have.
type form struct {
	typ    reflect.Type
	decode func(json.RawMessage) (Event, error)
	limits map[string]limit // by the field's name on the wire, at any depth
	needs  []string         // fields on the wire that must say something
}

// of is the form of an event's struct.
func of[E Event](with ...func(*form)) form {
	f := form{typ: reflect.TypeFor[E](), decode: decode[E], limits: map[string]limit{}}
	for _, w := range with {
		w(&f)
	}
	return f
}

func within(field string, least, most float64) func(*form) {
	return func(f *form) { f.limits[field] = limit{least, most} }
}

func most(field string, v float64) func(*form) { return within(field, 0, v) }

func need(fields ...string) func(*form) {
	return func(f *form) { f.needs = append(f.needs, fields...) }
}

func decode[E Event](b json.RawMessage) (Event, error) {
	var e E
	if len(b) == 0 {
		return e, nil
	}
	err := json.Unmarshal(b, &e)
	return e, err
}

// wireName is a field's name on the wire: empty for one that is not written.
func wireName(f reflect.StructField) string {
	name, _, _ := strings.Cut(f.Tag.Get("json"), ",")
	if name == "-" || !f.IsExported() {
		return ""
	}
	if name == "" {
		return strings.ToLower(f.Name)
	}
	return name
}
