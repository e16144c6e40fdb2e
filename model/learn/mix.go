package learn

import (
	"math"
	"regexp"
	"strconv"
	"strings"
)

// Mix is what an ore was mixed of: names and their shares by mass, which add up
// to 1. The empty mix is one of which nothing is known; it is the same as no
// other.
type Mix map[string]float64

// mixTolerance is by how much a part of two mixes may differ, as a share of the
// whole, for them to count as the same.
const mixTolerance = 0.1

// Same says whether two mixes are the same one: each part within 10 points.
func (m Mix) Same(o Mix) bool {
	if len(m) == 0 || len(o) == 0 {
		return false
	}
	return m.covers(o) && o.covers(m)
}

func (m Mix) covers(o Mix) bool {
	for name, share := range m {
		if math.Abs(share-o[name]) > mixTolerance+1e-9 {
			return false
		}
	}
	return true
}

var (
	aside     = regexp.MustCompile(`\([^)]*\)`)
	amountOf  = regexp.MustCompile(`^(.*\S)\s+(\d+(?:\.\d+)?)\s*(?:kg|%)?$`) // "limonite 6.5"
	letterOf  = regexp.MustCompile(`\b([A-Za-z]+)(\d+(?:\.\d+)?)\b`)         // "A6"
	betweenOf = regexp.MustCompile(`\s*[+,]\s*`)
)

// ParseMix reads a mix as people write one: "limonite 6.5 + red 25.2", "A6 C4",
// or one name. What stands in brackets is left out; case does not count.
func ParseMix(text string) Mix {
	text = strings.ToLower(strings.Join(strings.Fields(aside.ReplaceAllString(text, " ")), " "))
	if text == "" {
		return nil
	}
	var parts [][]string
	for _, piece := range betweenOf.Split(text, -1) {
		parts = append(parts, amountOf.FindStringSubmatch(piece))
	}
	if m := mixOf(parts); len(m) > 1 {
		return m
	}
	if m := mixOf(letterOf.FindAllStringSubmatch(text, -1)); len(m) > 1 {
		return m
	}
	return Mix{text: 1}
}

// mixOf makes a mix of names and amounts; none when one is lacking, stands twice
// or is nothing.
func mixOf(parts [][]string) Mix {
	m, sum := Mix{}, 0.0
	for _, p := range parts {
		if len(p) < 3 {
			return nil
		}
		amount, err := strconv.ParseFloat(p[2], 64)
		if _, twice := m[p[1]]; twice || err != nil || amount <= 0 {
			return nil
		}
		m[p[1]] = amount
		sum += amount
	}
	for name := range m {
		m[name] /= sum
	}
	return m
}
