package glow

import "math"

// Colour is a colour of sRGB (IEC 61966-2-1), 8 bits a part.
type Colour struct{ R, G, B uint8 }

// LCh is a colour of CIELAB under D65 (CIE 15) in its polar form: lightness 0 to
// 100, chroma from 0, hue in degrees.
type LCh struct{ L, C, H float64 }

// Colour is the nearest colour of sRGB with this lightness and hue: where there
// is none of this chroma, chroma falls by steps of 1 until there is.
func (p LCh) Colour() Colour {
	p.L = min(max(p.L, 0), 100)
	sin, cos := math.Sincos(p.H * math.Pi / 180)
	for ; p.C > 0; p.C-- {
		if r, g, b := linear(p.L, p.C*cos, p.C*sin); inside(r) && inside(g) && inside(b) {
			return Colour{encoded(r), encoded(g), encoded(b)}
		}
	}
	r, g, b := linear(p.L, 0, 0)
	return Colour{encoded(r), encoded(g), encoded(b)}
}

// Darker is the colour with so much less lightness, all else equal.
func (p LCh) Darker(by float64) LCh {
	p.L -= by
	return p
}

// Mix is the colour so far on the way from a to b, in sRGB, 0 to 1.
func Mix(a, b Colour, share float64) Colour {
	part := func(a, b uint8) uint8 { return uint8(math.Round(float64(a) + share*(float64(b)-float64(a)))) }
	return Colour{part(a.R, b.R), part(a.G, b.G), part(a.B, b.B)}
}

// The white of D65, Y 1 (ASTM E308, 2 degree observer).
const whiteX, whiteZ = 0.95047, 1.08883

// linear takes CIELAB to linear sRGB (CIE 15:2004 section 8.2.1; matrix of IEC
// 61966-2-1).
func linear(l, a, b float64) (red, green, blue float64) {
	fy := (l + 16) / 116
	x, y, z := whiteX*unroot(fy+a/500), unroot(fy), whiteZ*unroot(fy-b/200)
	return 3.2404542*x - 1.5371385*y - 0.4985314*z,
		-0.9692660*x + 1.8760108*y + 0.0415560*z,
		0.0556434*x - 0.2040259*y + 1.0572252*z
}

func unroot(f float64) float64 {
	if f > 6.0/29 {
		return f * f * f
	}
	return 3 * (6.0 / 29) * (6.0 / 29) * (f - 4.0/29)
}

// inside tells whether a part of linear sRGB can be shown, to half a step of 8
// bits.
func inside(v float64) bool { return v >= -0.0002 && v <= 1.002 }

// encoded is a part of linear sRGB with the curve of the standard.
func encoded(v float64) uint8 {
	v = min(max(v, 0), 1)
	if v <= 0.0031308 {
		v *= 12.92
	} else {
		v = 1.055*math.Pow(v, 1/2.4) - 0.055
	}
	return uint8(math.Round(255 * v))
}
