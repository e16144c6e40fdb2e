package cell

import "strings"

// ASCII is a text as an ASCII sheet writes it.
func ASCII(text string) string {
	var b strings.Builder
	for _, c := range text {
		if c < 0x80 {
			b.WriteRune(c)
			continue
		}
		b.WriteString(spelled(c))
	}
	return b.String()
}

// spelled is how a character is written in ASCII, in one or more characters:
// signs by their usual typewriter spelling, letters without their marks, and a
// question mark for all else.
func spelled(c rune) string {
	if s, ok := spelling[c]; ok {
		return s
	}
	return "?"
}

var spelling = func() map[rune]string {
	m := map[rune]string{
		'°': "", '±': "+-", '·': "-", '–': "-", '—': "-", '−': "-", '…': "...", '×': "x", '÷': "/",
		'→': "->", '←': "<-", '↑': "^", '↓': `\/`, '‘': "'", '’': "'", '“': `"`, '”': `"`, '«': `"`, '»': `"`,
		'²': "2", '³': "3", '₂': "2", '½': "1/2", '¼': "1/4", '¾': "3/4", '\u00a0': " ", '•': "o", '✓': "v",
		'ß': "ss", 'æ': "ae", 'Æ': "AE", 'œ': "oe", 'Œ': "OE", 'þ': "th", 'Þ': "Th", 'ð': "d", 'Ð': "D",
		'█': "#", '▓': "%", '▒': "+", '░': ":", '▀': "#", '▄': "#", '▌': "#", '▐': "#",
		'─': "-", '━': "=", '│': "|", '┃': "|", '┄': "-", '┈': ".", '═': "=", '╱': "/", '╲': `\`,
		'├': "+", '┤': "+", '┼': "+", '┬': "+", '┴': "+", '└': "+", '┘': "+", '┌': "+", '┐': "+",
	}
	for _, row := range []string{
		"aàáâãäåāăą", "AÀÁÂÃÄÅĀĂĄ", "cçćč", "CÇĆČ", "dďđ", "DĎĐ", "eèéêëēęě", "EÈÉÊËĒĘĚ", "gğ", "GĞ",
		"iìíîïīı", "IÌÍÎÏĪİ", "lłľĺ", "LŁĽĹ", "nñńň", "NÑŃŇ", "oòóôõöøōő", "OÒÓÔÕÖØŌŐ", "rřŕ", "RŘŔ",
		"sśšşș", "SŚŠŞȘ", "tťţț", "TŤŢȚ", "uùúûüūůű", "UÙÚÛÜŪŮŰ", "yýÿ", "YÝŸ", "zźżž", "ZŹŻŽ",
	} {
		for _, c := range row[1:] {
			m[c] = row[:1]
		}
	}
	return m
}()
