package account

import (
	"math"

	"chargehand/model/account"
	"chargehand/model/figure"
	"chargehand/model/forge"
	"chargehand/model/session"
	modelwords "chargehand/model/words"
	"chargehand/tui/cell"
	"chargehand/tui/letter"
	"chargehand/tui/screen"
	"chargehand/tui/theme"
	"chargehand/tui/words"
)

// Paint shows the account: the answer, where the iron went, what can be said of it, the
// yields and what it rests on.
func (s Screen) Paint(g cell.Grid, sh *screen.Shared) {
	s.rows.Paint(g, sh, words.AccountTitle, s.lines)
}

// lines paints everything from a row on, above the window too, and gives how many rows
// it takes.
func (s Screen) lines(g cell.Grid, sh *screen.Shared, from int) int {
	w, _ := g.Size()
	y := from
	if !sh.Smelt.Is() {
		return g.Wrap(cell.Rect{X: 2, Y: y + 1, W: w - 4, H: 3}, words.AccountNoSmelt, sh.Theme.Style(theme.Text)) + 1
	}
	made := s.of(sh)
	if err := made.err; err != nil {
		g.Wrap(cell.Rect{X: 2, Y: y + 1, W: w - 4, H: 4}, modelwords.AccountFailed(sh.Smelt.ID(), err), sh.Theme.Style(theme.Text))
		return 5
	}
	p := painter{g: g, sh: sh, w: w, a: made.account, smelt: made.whole}
	y = p.answer(y)
	y = p.rule(y)
	y = p.rows(y)
	y = p.rule(y)
	y = p.said(y, modelwords.AccountVerdict(p.a), theme.Strong)
	y = p.rule(y)
	return p.sums(y) - from
}

// painter paints the parts of an account one under another; each gives the next row.
type painter struct {
	g  cell.Grid
	sh *screen.Shared
	w  int

	a     account.Account
	smelt session.Session // the whole of it
}

func (p painter) style(r theme.Role) cell.Style { return p.sh.Theme.Style(r) }

func (p painter) rule(y int) int {
	p.g.Fill(cell.Rect{Y: y, W: p.w, H: 1}, p.sh.Theme.Marks().HLine, p.style(theme.Frame))
	return y + 1
}

// roomy tells whether there is room for large letters and bars.
func (p painter) roomy() bool { return p.w >= 110 }

// answer is what came, in large letters where there is room, and what was foretold.
func (p painter) answer(y int) int {
	o, over := p.smelt.Outcome()
	bloom := words.AccountNoBloomYet
	switch {
	case o.Bloom.Positive():
		bloom = p.sh.Units.Kg(o.Bloom.Value)
	case over && o.None:
		bloom = words.AccountNone
	case over:
		bloom = words.AccountNotWeighed
	}
	head := words.AccountBloom(o.State)
	if p.roomy() {
		scale, besides, large := letter.Small, "", ""
		besides, large = p.beside(o)
		wide := func(text string) int { w, _ := letter.Middle.Size(words.Large(text)); return w }
		if p.w >= 170 && p.sh.H >= 50 && max(wide(bloom), wide(large)) < p.w/2-4 {
			scale = letter.Middle
		}
		_, rows := scale.Size(words.Large(bloom))
		p.g.Text(2, y, head, p.style(theme.Quiet))
		scale.Text(p.g, 2, y+1, words.Large(bloom), p.style(theme.Strong), p.sh.Theme.ASCII)
		if large != "" {
			p.g.Text(p.w/2, y, besides, p.style(theme.Quiet))
			scale.Text(p.g, p.w/2, y+1, words.Large(large), p.style(theme.Strong), p.sh.Theme.ASCII)
		}
		p.g.TextIn(cell.Rect{X: 2, Y: y + rows + 2, W: p.w - 4, H: 1}, p.promised(p.planned()), p.style(theme.Text))
		return y + rows + 3
	}
	x := 2 + p.g.Text(2, y, head+" ", p.style(theme.Quiet))
	p.g.Text(x, y, bloom, p.style(theme.Strong))
	said := p.promised(false)
	rows := p.g.Rows(said, p.w-4)
	p.g.Wrap(cell.Rect{X: 2, Y: y + 1, W: p.w - 4, H: rows}, said, p.style(theme.Text))
	return y + 1 + rows
}

// planned tells whether the large letters say that what was wanted came or not.
func (p painter) planned() bool {
	o, _ := p.smelt.Outcome()
	plan := p.smelt.Light().Plan
	return plan != nil && words.AccountCame(plan.Wanted, o.Bloom) != ""
}

// beside is what stands beside the bloom in large letters: whether what was wanted came, else the yield of the ore.
func (p painter) beside(o session.Outcome) (head, large string) {
	if plan := p.smelt.Light().Plan; plan != nil {
		if came := words.AccountCame(plan.Wanted, o.Bloom); came != "" {
			return words.AccountWantedHead(p.sh.Units, plan.Wanted), came
		}
	}
	if y := p.a.Yield(account.BloomMass, account.OreDry); y != nil {
		told := modelwords.AccountYield(*y)
		return told.Of, told.Is
	}
	return "", ""
}

// promised is what was wanted and foretold, against what came; what was wanted only where
// it is not said already.
func (p painter) promised(already bool) string {
	o, over := p.smelt.Outcome()
	said := words.AccountNotPlanned
	switch plan := p.smelt.Light().Plan; {
	case already:
		said = ""
	case plan != nil && plan.Wanted.Mass.Known:
		said = words.AccountWanted(p.sh.Units, plan.Wanted, o.Bloom)
	}
	if f := o.Foretold; over && f.Known() {
		said = words.Joined(said, words.AccountForetold(p.sh.Units, f))
	} else if f := p.smelt.Reading().Figure(figure.BloomEnd); !over && f.Known() {
		said = words.Joined(said, words.AccountForetold(p.sh.Units, f))
	}
	return said
}

// cascade is where each bar begins and ends: what came out begins where the one above
// ended, so that the eye adds up.
type cascade struct {
	long, x int
	most    float64
}

func (c cascade) at(kg float64) int {
	return c.x + max(0, min(c.long, int(math.Round(kg/c.most*float64(c.long)))))
}

// names are how wide the names of the streams are, kgs the numbers.
const (
	names = 44
	kgs   = 12

	leastName = 26 // as narrow as a name still tells what it is
)

// rows are the streams with their iron, the open rest last.
func (p painter) rows(y int) int {
	in, out := kept(p.a.In), kept(p.a.Out)
	most := 0.1
	for _, side := range [][]account.Row{in, out} {
		sum := 0.0
		for _, r := range side {
			if r.Iron.Known() {
				most = math.Max(most, sum+r.Iron.Band().P90)
				sum += math.Max(0, r.Iron.Value)
			}
		}
		most = math.Max(most, sum)
	}
	name, rests := names, 28
	if !p.roomy() {
		name, rests = min(names, p.w-kgs-30), 26
	}
	if name < leastName { // what each rests on gives way to what it is
		name, rests = p.w-kgs-3, 0
	}
	c := cascade{x: name + kgs + 6, most: most}
	if p.roomy() {
		c.long = p.w - c.x - rests - 3
	}
	side := func(y int, head string, rows []account.Row) (int, float64) {
		p.g.Text(2, y, head, p.style(theme.Quiet))
		p.g.TextRight(2+name+kgs, y, words.AccountKgIron, p.style(theme.Quiet))
		y++
		sum := 0.0
		for _, r := range rows {
			p.g.TextIn(cell.Rect{X: 2, Y: y, W: name, H: 1}, modelwords.AccountStream(r), p.style(theme.Text))
			p.g.TextRight(2+name+kgs, y, words.AccountIron(r.Iron), p.style(theme.Strong))
			if c.long > 0 {
				p.bar(c, y, sum, r)
			}
			if rests > 0 && 2+name+kgs < p.w-rests {
				p.g.TextIn(cell.Rect{X: p.w - rests, Y: y, W: rests - 1, H: 1}, modelwords.AccountRests(r), p.style(theme.Quiet))
			}
			if r.Iron.Known() {
				sum += math.Max(0, r.Iron.Value)
			}
			y++
		}
		return y, sum
	}
	y, _ = side(y, words.AccountIronIn, in)
	if p.roomy() {
		y++
	}
	y, sum := side(y, words.AccountIronOut, out)
	if o := p.a.Iron.Open; o.Known() {
		p.g.Text(2, y, words.AccountOpen, p.style(theme.Strong))
		p.g.TextRight(2+name+kgs, y, words.AccountIron(o), p.style(theme.Strong))
		if c.long > 0 && o.Value > 0 {
			p.g.Fill(cell.Rect{X: c.at(sum), Y: y, W: max(1, c.at(sum+o.Value)-c.at(sum)), H: 1}, '/', p.style(theme.Text))
		}
		y++
	}
	if c.long > 0 {
		step := marks(most)
		for kg := 0.0; kg <= most; kg += step {
			p.g.Text(c.at(kg), y, words.AccountMark(kg, kg+step > most), p.style(theme.Quiet))
		}
		y++
	}
	return y
}

// marks is how far apart the marks under the bars lie, so that there are two to five of
// them beside nought: one, two or five of some power of ten.
func marks(most float64) float64 {
	ten := math.Pow(10, math.Floor(math.Log10(most/2)))
	for _, n := range []float64{1, 2, 5} {
		if most/(n*ten) < 6 {
			return n * ten
		}
	}
	return 10 * ten
}

// kept are the streams that hold iron of which an account is given.
func kept(rows []account.Row) []account.Row {
	var all []account.Row
	for _, r := range rows {
		if r.Place != account.WallAndAsh && r.Place != account.Flux {
			all = append(all, r)
		}
	}
	return all
}

// bar is a stream's iron from where the one above ended: sure up to its 10th
// percentile, then in doubt up to its middle, with a line up to its 90th.
func (p painter) bar(c cascade, y int, from float64, r account.Row) {
	if !r.Iron.Known() {
		return
	}
	role := theme.Bar
	switch r.Place {
	case account.Ore:
		role = theme.OreBar
	case account.Bloom, account.FragmentsOut, account.FragmentsIn:
		role = theme.Now
	}
	solid, paler := '▆', '▒'
	if p.sh.Theme.ASCII {
		solid, paler = '=', '-'
	}
	b := r.Iron.Band()
	start, sure, mid, end := c.at(from), c.at(from+b.P10), c.at(from+b.P50), c.at(from+b.P90)
	p.g.Fill(cell.Rect{X: start, Y: y, W: max(0, sure-start), H: 1}, solid, p.style(role))
	p.g.Fill(cell.Rect{X: max(start, sure), Y: y, W: max(0, mid-max(start, sure)), H: 1}, paler, p.style(role))
	p.g.Fill(cell.Rect{X: max(start, mid), Y: y, W: max(0, end-max(start, mid)), H: 1}, p.sh.Theme.Marks().BarGood, p.style(theme.Good))
}

// said are sentences, the first as it weighs and the rest as plain words.
func (p painter) said(y int, sentences []string, first theme.Role) int {
	for i, one := range sentences {
		role := theme.Text
		if i == 0 || first == theme.Quiet {
			role = first
		}
		y += p.g.Wrap(cell.Rect{X: 2, Y: y, W: p.w - 4, H: p.g.Rows(one, p.w-4)}, one, p.style(role))
	}
	return y
}

// sums are the yields and what else went through, beside each other where there is room.
func (p painter) sums(y int) int {
	if !p.roomy() {
		return p.said(p.yields(y), modelwords.AccountPassages(p.a), theme.Quiet)
	}
	left, right := p, p
	left.w = p.w * 3 / 5
	right.w = p.w - left.w
	_, h := p.g.Size()
	right.g = p.g.Sub(cell.Rect{X: left.w, W: right.w, H: h})
	right.g.Text(2, y, words.AccountSums, p.style(theme.Quiet))
	end := max(left.yields(y), right.said(y+1, modelwords.AccountPassages(p.a), theme.Quiet))
	p.g.Fill(cell.Rect{X: left.w, Y: y, W: 1, H: end - y}, p.sh.Theme.Marks().VLine, p.style(theme.Frame))
	return end
}

// yields are what came per what went in, each with its base, and how long it took.
func (p painter) yields(y int) int {
	p.g.Text(2, y, words.AccountYields, p.style(theme.Quiet))
	y++
	var told []modelwords.Told
	for _, one := range p.a.Yields {
		told = append(told, modelwords.AccountYield(one))
	}
	o, over := p.smelt.Outcome()
	if over {
		told = append(told, words.AccountHours(o.Lasted, o.Extracted))
	}
	y = p.table(y, told)
	var all []string
	if over {
		for _, one := range modelwords.Promised(p.sh.Units, p.smelt.Light().Plan, o) {
			all = append(all, modelwords.PromisedLine([]string{one}))
		}
	}
	if len(p.a.Yields) == 0 {
		all = append(all, words.AccountNoYield)
	}
	if made := modelwords.PiecesOf(forge.Of(p.sh.House(), nil), p.smelt.Light().UID); made != "" {
		all = append(all, words.AccountPieces(made))
	}
	all = append(all, p.lessons()...)
	return p.said(y, all, theme.Text)
}

// table says figures, the numbers under each other.
func (p painter) table(y int, told []modelwords.Told) int {
	name := 0
	for _, t := range told {
		name = max(name, p.g.Width(t.What))
	}
	of := 2 + name + 2 + 10
	for _, t := range told {
		p.g.Text(2, y, t.What, p.style(theme.Text))
		p.g.TextRight(of, y, t.Is, p.style(theme.Strong))
		room := p.w - of - 3
		rows := p.g.Rows(t.Of, room)
		p.g.Wrap(cell.Rect{X: of + 2, Y: y, W: room, H: rows}, t.Of, p.style(theme.Quiet))
		y += rows
	}
	return y
}

// lessons are the lines kept of this smelt for next time.
func (p painter) lessons() []string {
	var all []string
	for _, l := range p.sh.House().Lessons {
		if l.Smelt == p.smelt.Light().UID && l.Smelt != "" {
			all = append(all, words.LessonIs(l.Text))
		}
	}
	return all
}
