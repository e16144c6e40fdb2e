package scene

// What the tests outside need of the inside.
const (
	LeastFigures = leastFigures
	DownFigures  = downFigures
)

func (l Layout) Raised(rows, stay int) Layout { return l.raised(rows, stay) }
func (l Layout) Headed(rows, stay int) Layout { return l.headed(rows, stay) }
