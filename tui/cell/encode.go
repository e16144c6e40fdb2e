package cell

import (
	"sync"
	"unicode/utf8"
)

// Encode is the sheet as the terminal takes it: its rows, joined by newlines,
// each exactly as wide as the sheet. Neighbours of one look share one escape
// sequence, and every row starts and ends in the terminal's own look, so that
// a renderer may rewrite any of them alone.
func (g Grid) Encode(p *Palette) string {
	buffer := buffers.Get().(*[]byte)
	b := (*buffer)[:0]
	for y := range g.h {
		if y > 0 {
			b = append(b, '\n')
		}
		b = g.encodeRow(b, y, p)
	}
	text := string(b)
	*buffer = b
	buffers.Put(buffer)
	return text
}

// buffers are kept from frame to frame: how long a frame gets depends on how
// many colours are in it.
var buffers = sync.Pool{New: func() any { return new([]byte) }}

func (g Grid) encodeRow(b []byte, y int, p *Palette) []byte {
	var look Style
	plain := true
	for i, c := range g.row(y) {
		if c.char == tail {
			continue
		}
		if (plain && i == 0) || (c.style != look && !(c.char == ' ' && sameBlank(c.style, look))) {
			if !plain && c.style.Attr == look.Attr && p.says(c.style) {
				b = p.change(b, look, c.style)
			} else {
				was := plain
				if b, plain = p.begin(b, c.style, was); plain && !was {
					b = append(b, reset...)
				}
			}
			look = c.style
		}
		b = appendRune(b, c.char)
	}
	if !plain {
		b = append(b, reset...)
	}
	return b
}

const reset = "\x1b[m"

// says tells whether a look sets both colours, so that it may follow another
// one without a reset between.
func (p *Palette) says(s Style) bool {
	return (s.Ink >= Inks || p.Ink[s.Ink] != "") && (s.Paper >= Inks || p.Paper[s.Paper] != "")
}

// change appends what differs of two looks that both set their colours and have
// the same attributes: in a picture of many colours most cells change but one.
func (p *Palette) change(b []byte, from, to Style) []byte {
	b = append(b, "\x1b["...)
	if from.Ink != to.Ink {
		b = p.ink(b, to.Ink)
	}
	if from.Paper != to.Paper {
		b = p.paper(b, to.Paper)
	}
	b[len(b)-1] = 'm'
	return b
}

// begin appends the sequence that turns a look on. Nothing is appended, and
// plain is true, for a look that the palette says nothing about.
func (p *Palette) begin(b []byte, s Style, plain bool) ([]byte, bool) {
	before := len(b)
	b = append(b, "\x1b["...)
	if !plain {
		b = append(b, '0', ';')
	}
	n := len(b)
	if s.Attr&Bold != 0 {
		b = append(b, "1;"...)
	}
	if s.Attr&Underline != 0 {
		b = append(b, "4;"...)
	}
	if s.Attr&Inverse != 0 {
		b = append(b, "7;"...)
	}
	b = p.paper(p.ink(b, s.Ink), s.Paper)
	if len(b) == n {
		return b[:before], true
	}
	b[len(b)-1] = 'm'
	return b, false
}

// ink and paper append the parameters of a colour with a semicolon after them,
// or nothing for one that the palette says nothing about.
func (p *Palette) ink(b []byte, i Ink) []byte {
	if i >= Inks {
		return i.parameters(b, 30)
	}
	return p.held(b, p.Ink[i])
}

func (p *Palette) paper(b []byte, i Ink) []byte {
	if i >= Inks {
		return i.parameters(b, 40)
	}
	return p.held(b, p.Paper[i])
}

func (p *Palette) held(b []byte, parameters string) []byte {
	if parameters == "" {
		return b
	}
	return append(append(b, parameters...), ';')
}

// parameters appends what sets a colour by itself: first is 30 for letters, 40
// for paper (ECMA-48, 8.3.117; those of more than the first eight as theme has
// them too).
func (i Ink) parameters(b []byte, first uint8) []byte {
	switch i & inkKind {
	case fullInk:
		b = append(decimal(b, first+8), ";2;"...)
		b = append(decimal(b, uint8(i>>16)), ';')
		b = append(decimal(b, uint8(i>>8)), ';')
		b = decimal(b, uint8(i))
	case indexInk:
		b = append(decimal(b, first+8), ";5;"...)
		b = decimal(b, uint8(i))
	default:
		if n := uint8(i) & 15; n < 8 {
			b = decimal(b, first+n)
		} else {
			b = decimal(b, first+60+n-8)
		}
	}
	return append(b, ';')
}

// decimal appends a number below 256.
func decimal(b []byte, n uint8) []byte {
	if n >= 100 {
		b = append(b, '0'+n/100)
	}
	if n >= 10 {
		b = append(b, '0'+n/10%10)
	}
	return append(b, '0'+n%10)
}

// sameBlank tells whether a blank looks the same in both styles: the ink of a
// blank is not seen.
func sameBlank(a, b Style) bool {
	const seen = Underline | Inverse
	return a.Paper == b.Paper && a.Attr&seen == 0 && b.Attr&seen == 0
}

// String is the sheet without any escape sequence.
func (g Grid) String() string {
	b := make([]byte, 0, g.w*g.h*2+g.h)
	for y := range g.h {
		if y > 0 {
			b = append(b, '\n')
		}
		for _, c := range g.row(y) {
			if c.char != tail {
				b = appendRune(b, c.char)
			}
		}
	}
	return string(b)
}

func appendRune(b []byte, c rune) []byte {
	if c < utf8.RuneSelf {
		return append(b, byte(c))
	}
	return utf8.AppendRune(b, c)
}
