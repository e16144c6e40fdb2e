package draw

import (
	"strings"

	"chargehand/tui/cell"
)

// The block letters, in the same hand as the digits but with their corners cut
// off where a digit is square, so that O is no nought, S no five, B no eight
// and Z no two.
var letters = map[rune][5]string{
	'A': {"###", "# #", "###", "# #", "# #"},
	'B': {"## ", "# #", "## ", "# #", "## "},
	'C': {" ##", "#  ", "#  ", "#  ", " ##"},
	'D': {"## ", "# #", "# #", "# #", "## "},
	'E': {"###", "#  ", "## ", "#  ", "###"},
	'F': {"###", "#  ", "## ", "#  ", "#  "},
	'G': {" ##", "#  ", "# #", "# #", " ##"},
	'H': {"# #", "# #", "###", "# #", "# #"},
	'I': {"###", " # ", " # ", " # ", "###"},
	'J': {"  #", "  #", "  #", "# #", " # "},
	'K': {"# #", "# #", "## ", "# #", "# #"},
	'L': {"#  ", "#  ", "#  ", "#  ", "###"},
	'M': {"#   #", "## ##", "# # #", "#   #", "#   #"},
	'N': {"#  #", "## #", "# ##", "#  #", "#  #"},
	'O': {" ## ", "#  #", "#  #", "#  #", " ## "},
	'P': {"## ", "# #", "## ", "#  ", "#  "},
	'Q': {" ## ", "#  #", "#  #", "# ##", " ###"},
	'R': {"## ", "# #", "## ", "# #", "# #"},
	'S': {" ##", "#  ", " # ", "  #", "## "},
	'T': {"###", " # ", " # ", " # ", " # "},
	'U': {"# #", "# #", "# #", "# #", "###"},
	'V': {"# #", "# #", "# #", "# #", " # "},
	'W': {"#   #", "#   #", "# # #", "## ##", "#   #"},
	'X': {"# #", "# #", " # ", "# #", "# #"},
	'Y': {"# #", "# #", " # ", " # ", " # "},
	'Z': {"###", "  #", " # ", "#  ", "###"},
	'!': {"#", "#", "#", " ", "#"},
	',': {"  ", "  ", "  ", " #", "# "},
	'/': {"  #", "  #", " # ", "#  ", "#  "},
	'%': {"# #", "  #", " # ", "#  ", "# #"},
}

// capitals is a text in what the block font has, and whether it has all of it:
// a measure may be named in any script.
func capitals(text string) (string, bool) {
	all := true
	for _, c := range text {
		all = all && (c < 0x80 || cell.ASCII(string(c)) != "?")
	}
	text = strings.ToUpper(cell.ASCII(text))
	for _, c := range text {
		_, digit := dots[c]
		_, letter := letters[c]
		all = all && (digit || letter)
	}
	return text, all
}
