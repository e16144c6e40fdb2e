package theme

// Marks are the signs that say without colour what colour also says, and the
// characters that pictures are drawn with.
type Marks struct {
	Look, Act, Kept, Struck, Picked, Late string
	Cursor, Dot, Ask, Waiting, Refused    string
	Off                                   string // a figure that is not what it should be
	Ticked, Open                          string // on a list, and not yet
	Yields, YieldsBrief                   string // the arrow of an equation, and in one cell
	Back                                  string // a replay runs backwards, and forwards
	Forth                                 string

	HLine, VLine, Fine      rune // line across, line down, the charging mark
	Wall, Floor             rune
	CornerLeft, CornerRight rune
	Upper, Lower, Full      rune // halves of a cell and the whole one, for digits
	Eighths                 []rune
	Hang, HangFull, Beyond  rune // bars that hang down: half a cell and a whole one; a bar that goes on beyond
	Grain                   rune // of ore
	Bath, Bloom             rune

	BarLine, BarGood, BarAt, BarEnd rune // a short bar: its line, the good band, where the figure stands, its ends
	BarFull, BarTick                rune // a bar that fills, and a tick on it
	TeeRight                        rune // a line down that one to the right joins
	TopLeft, TopRight               rune // corners of a card, with the two below
	LowLeft, LowRight               rune
	TickCharge, TickTap, TickNote   rune // on a time line: a charge, a tap, a note
	Here                            rune // and where one stands
	Pipe, Slope, Nozzle, Shut       rune // the tuyere from the left: pipe, its step downwards, its mouth, its mouth without blast
	SlopeR, NozzleR                 rune // the same from the right
	Glow                            [6][2]rune
}

// Marks are the marks of this theme.
func (t Theme) Marks() *Marks {
	if t.ASCII {
		return &asciiMarks
	}
	return &fullMarks
}

var fullMarks = Marks{
	Look: "!", Act: "!!", Kept: "✓", Off: "◆", Struck: "×", Picked: ">", Late: "late", Cursor: "▏", Dot: "·", Ask: "?", Waiting: "…", Refused: "–",
	Ticked: "[x]", Open: "[ ]", Back: "◀", Forth: "▶", Yields: "→", YieldsBrief: "→",
	HLine: '─', VLine: '│', Fine: '┈', Wall: '┃', Floor: '━', CornerLeft: '┗', CornerRight: '┛',
	Upper: '▀', Lower: '▄', Full: '█', Eighths: []rune(" ▁▂▃▄▅▆▇█"), Hang: '▀', HangFull: '█', Beyond: '▲',
	Grain: '•', Bath: '≈', Bloom: '█',
	BarLine: '─', BarGood: '━', BarAt: '●', BarEnd: '│', BarFull: '━', BarTick: '┃', TeeRight: '├',
	TopLeft: '┌', TopRight: '┐', LowLeft: '└', LowRight: '┘', TickCharge: '╵', TickTap: '▼', TickNote: '◦', Here: '┃',
	Pipe: '═', Slope: '╲', Nozzle: '▶', Shut: '×', SlopeR: '╱', NozzleR: '◀',
	Glow: [6][2]rune{{'·', ' '}, {'░', ' '}, {'░', '░'}, {'▒', '▒'}, {'▓', '▓'}, {'█', '█'}},
}

var asciiMarks = Marks{
	Look: "!", Act: "!!", Kept: "ok", Off: "!", Struck: "x", Picked: ">", Late: "late", Cursor: "_", Dot: "-", Ask: "?", Waiting: "...", Refused: "-",
	Ticked: "[x]", Open: "[ ]", Back: "<", Forth: ">", Yields: "->", YieldsBrief: ">",
	HLine: '-', VLine: '|', Fine: '.', Wall: '|', Floor: '=', CornerLeft: '+', CornerRight: '+',
	Upper: '#', Lower: '#', Full: '#', Eighths: []rune(" ___===##"), Hang: '#', HangFull: '#', Beyond: '^',
	Grain: 'o', Bath: '~', Bloom: '@',
	BarLine: '-', BarGood: '=', BarAt: '#', BarEnd: '|', BarFull: '=', BarTick: '|', TeeRight: '+',
	TopLeft: '+', TopRight: '+', LowLeft: '+', LowRight: '+', TickCharge: '\'', TickTap: 'v', TickNote: 'o', Here: '|',
	Pipe: '=', Slope: '\\', Nozzle: '>', Shut: 'x', SlopeR: '/', NozzleR: '<',
	Glow: [6][2]rune{{'.', ' '}, {':', ' '}, {':', ':'}, {'+', '+'}, {'%', '%'}, {'#', '#'}},
}
