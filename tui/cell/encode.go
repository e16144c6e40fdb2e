package cell

import "unicode/utf8"

// Encode is the sheet as the terminal takes it: its rows, joined by newlines,
// each exactly as wide as the sheet. Neighbours of one look share one escape
// sequence, and every row starts and ends in the terminal's own look, so that
// a renderer may rewrite any of them alone.
func (g Grid) Encode(p *Palette) string {
	b := make([]byte, 0, g.w*g.h*2+g.h*32)
	for y := range g.h {
		if y > 0 {
			b = append(b, '\n')
		}
		b = g.encodeRow(b, y, p)
	}
	return string(b)
}

func (g Grid) encodeRow(b []byte, y int, p *Palette) []byte {
	var look Style
	plain := true
	for i, c := range g.row(y) {
		if c.char == tail {
			continue
		}
		if (plain && i == 0) || (c.style != look && !(c.char == ' ' && sameBlank(c.style, look))) {
			was := plain
			if b, plain = p.begin(b, c.style, was); plain && !was {
				b = append(b, reset...)
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

// begin appends the sequence that turns a look on. Nothing is appended, and
// plain is true, for a look that the palette says nothing about.
func (p *Palette) begin(b []byte, s Style, plain bool) ([]byte, bool) {
	ink, paper := p.Ink[s.Ink], p.Paper[s.Paper]
	if s.Attr == 0 && ink == "" && paper == "" {
		return b, true
	}
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
	if ink != "" {
		b = append(append(b, ink...), ';')
	}
	if paper != "" {
		b = append(append(b, paper...), ';')
	}
	if len(b) > n {
		b = b[:len(b)-1]
	}
	return append(b, 'm'), false
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
