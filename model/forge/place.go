package forge

import (
	"strconv"
	"strings"

	"chargehand/model/house"
)

// PlaceOn is where on a piece a test was, in parts of its length from the left: a number
// is cm from there, and the words for its ends and its middle are known.
func PlaceOn(place string, lengthCm float64) (part float64, known bool) {
	p := strings.ToLower(strings.TrimSpace(place))
	digits := strings.IndexFunc(p, func(c rune) bool { return (c < '0' || c > '9') && c != '.' && c != ',' })
	if digits < 0 {
		digits = len(p)
	}
	if cm, err := strconv.ParseFloat(strings.ReplaceAll(p[:digits], ",", "."), 64); err == nil && lengthCm > 0 {
		part := cm / lengthCm
		if strings.Contains(p, "right") {
			part = 1 - part
		}
		return part, part >= 0 && part <= 1
	}
	for word, part := range map[string]float64{"left": 0, "tang": 0, "middle": 0.5, "centre": 0.5, "right": 1, "tip": 1} {
		if strings.Contains(p, word) {
			return part, true
		}
	}
	return 0, false
}

// LengthOf is how long a piece is, in cm: by its size, nought where that is not known.
func LengthOf(p house.Piece) float64 {
	if len(p.Size) != 3 {
		return 0
	}
	return float64(p.Size[2]) / 10
}
