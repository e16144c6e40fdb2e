package columns

import (
	"strconv"
	"strings"
)

// threes are what stands between digits written in threes.
const threes = ".,' \u00a0\u202f"

// Number reads digits; with a decimal comma one comma is a point. Digits may stand in threes, as
// spreadsheets write them: where a point and a comma stand in a number the last of them is the
// decimal one, and without decimal commas 1,900 is nineteen hundred.
func Number(cell string, decimalComma bool) (float64, bool) {
	if strings.Trim(cell, "+-0123456789"+threes) != "" {
		return 0, false
	}
	decimal := "."
	if point, comma := strings.LastIndex(cell, "."), strings.LastIndex(cell, ","); comma >= 0 && (point < 0 && decimalComma || point >= 0 && point < comma) {
		decimal = ","
	}
	whole, part, _ := strings.Cut(cell, decimal)
	if groups := strings.FieldsFunc(whole, func(c rune) bool { return strings.ContainsRune(threes, c) }); len(groups) > 1 {
		for i, g := range groups {
			if len(g) != 3 && i > 0 || i == 0 && len(strings.TrimLeft(g, "+-")) > 3 {
				return 0, false
			}
		}
		whole = strings.Join(groups, "")
	}
	if part != "" || strings.Contains(cell, decimal) {
		whole += "." + part
	}
	v, err := strconv.ParseFloat(whole, 64)
	return v, err == nil
}

// DecimalComma tells whether a comma in a number is a decimal one, by what parts the columns and
// by what stands in them: where that is a tab a point with decimals behind it says that it is not.
func DecimalComma(between rune, rows [][]string) bool {
	if between != '\t' {
		return between != ','
	}
	point := false
	for _, row := range rows {
		for _, cell := range row {
			_, is := Number(cell, false)
			_, comma := Number(cell, true)
			if comma && !is { // 1,9
				return true
			}
			point = point || is && strings.Contains(cell, ".")
		}
	}
	return !point
}
