package cell

// Rect is a rectangle of cells.
type Rect struct{ X, Y, W, H int }

// Right is the column just past the rectangle, Bottom the row just past it.
func (r Rect) Right() int { return r.X + r.W }

// Bottom is the row just past the rectangle.
func (r Rect) Bottom() int { return r.Y + r.H }

// Empty tells whether it holds no cell.
func (r Rect) Empty() bool { return r.W <= 0 || r.H <= 0 }

// Inset leaves a margin of dx columns on the left and right and dy rows above
// and below.
func (r Rect) Inset(dx, dy int) Rect {
	return Rect{r.X + dx, r.Y + dy, max(r.W-2*dx, 0), max(r.H-2*dy, 0)}
}

// CutTop cuts off the first n rows, or as many as there are. The two parts
// always tile the whole, here and in its sisters.
func (r Rect) CutTop(n int) (cut, rest Rect) {
	n = min(max(n, 0), r.H)
	return Rect{r.X, r.Y, r.W, n}, Rect{r.X, r.Y + n, r.W, r.H - n}
}

// CutBottom cuts off the last n rows.
func (r Rect) CutBottom(n int) (cut, rest Rect) {
	rest, cut = r.CutTop(r.H - min(max(n, 0), r.H))
	return cut, rest
}

// CutLeft cuts off the first n columns.
func (r Rect) CutLeft(n int) (cut, rest Rect) {
	n = min(max(n, 0), r.W)
	return Rect{r.X, r.Y, n, r.H}, Rect{r.X + n, r.Y, r.W - n, r.H}
}

// within is the part of the rectangle that lies inside w by h cells.
func (r Rect) within(w, h int) Rect {
	x0, y0 := max(r.X, 0), max(r.Y, 0)
	return Rect{x0, y0, max(min(r.Right(), w)-x0, 0), max(min(r.Bottom(), h)-y0, 0)}
}
