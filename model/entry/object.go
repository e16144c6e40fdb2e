package entry

import (
	"bytes"
	"encoding/json"
	"math"
	"strconv"
	"time"
)

// object appends JSON field by field. The frame of an entry and the act keyed
// most often are written with it, because they stand between a key and the
// disk, where encoding/json's reflection costs more than all else before the
// write. The bytes are those that encoding/json gives (tested), with the
// letters of HTML left as they are. The first error stays.
type object struct {
	b   []byte
	err error
}

// key begins a field.
func (o *object) key(name string) {
	if n := len(o.b); n > 0 && o.b[n-1] != '{' {
		o.b = append(o.b, ',')
	}
	o.b = append(append(append(o.b, '"'), name...), '"', ':')
}

// text adds a field of text, unless it is empty.
func (o *object) text(name, s string) {
	if s != "" {
		o.key(name)
		o.quote(s)
	}
}

// integer adds a field of a whole number.
func (o *object) integer(name string, n int64) {
	o.key(name)
	o.b = strconv.AppendInt(o.b, n, 10)
}

// number adds a field of a number, which has to be finite.
func (o *object) number(name string, v float64) {
	o.key(name)
	if small := math.Abs(v); v == 0 || 1e-6 <= small && small < 1e15 {
		o.b = strconv.AppendFloat(o.b, v, 'f', -1, 64)
		return
	}
	o.value(v)
}

// seconds adds a field of a duration, unless it is nought.
func (o *object) seconds(name string, d time.Duration) {
	if d != 0 {
		o.number(name, d.Seconds())
	}
}

// time adds a field of a wall time, unless there is none.
func (o *object) time(name string, t time.Time) {
	if !t.IsZero() {
		o.text(name, formatTime(t))
	}
}

// event adds the kind of an event and, where it says more than that, the event.
func (o *object) event(ev Event) {
	if ev == nil {
		return
	}
	o.text("kind", string(ev.Kind()))
	before := len(o.b)
	o.key("event")
	start := len(o.b)
	if w, ok := ev.(written); ok {
		w.appendTo(o)
	} else {
		o.value(ev)
	}
	if said := string(o.b[start:]); said == "{}" || said == "null" {
		o.b = o.b[:before]
	}
}

// end closes the object and gives its bytes, or the first error.
func (o *object) end() ([]byte, error) {
	if o.err != nil {
		return nil, o.err
	}
	return append(o.b, '}'), nil
}

// quote adds a text as a value.
func (o *object) quote(s string) {
	for i := range len(s) {
		if c := s[i]; c < ' ' || c > '~' || c == '"' || c == '\\' {
			o.value(s) // what is not plain is left to the library
			return
		}
	}
	o.b = append(append(append(o.b, '"'), s...), '"')
}

// value adds any value as the library writes it.
func (o *object) value(v any) {
	var b bytes.Buffer
	enc := json.NewEncoder(&b)
	enc.SetEscapeHTML(false)
	if err := enc.Encode(v); err != nil && o.err == nil {
		o.err = err
	}
	o.b = append(o.b, bytes.TrimSuffix(b.Bytes(), []byte("\n"))...)
}

// maybe adds a field of a quantity, if it was recorded.
func maybe[Q Quantity](o *object, name string, m Maybe[Q]) {
	if m.Known {
		o.number(name, float64(m.Value))
	}
}

// written is an event that appends itself.
type written interface{ appendTo(o *object) }

func (c Charge) appendTo(o *object) {
	o.b = append(o.b, '{')
	if len(c.Parts) > 0 {
		o.key("parts")
		c.Parts.appendTo(o)
	}
	o.b = append(o.b, '}')
}

func (ps Parts) appendTo(o *object) {
	for i, p := range ps {
		o.b = append(o.b, "[,"[min(i, 1)])
		p.appendTo(o)
	}
	o.b = append(o.b, ']')
}

func (p Part) appendTo(o *object) {
	o.b = append(o.b, '{')
	o.key("what")
	o.quote(string(p.What))
	o.text("lot", p.Lot)
	o.text("measure", p.Measure)
	maybe(o, "count", p.Count)
	maybe(o, "mass_kg", p.Mass)
	o.b = append(o.b, '}')
}
