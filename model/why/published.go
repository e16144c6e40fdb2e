package why

// Trend is how the yield of published smelts goes with something that was recorded of them: a rank correlation over so many
// smelts of 9 kg of ore or more that were weighed (testdata/smelts/smelts.csv, fitted here: TestTheTrendsAreThePublished).
type Trend struct {
	With   Quantity
	Smelts int
	Rank   float64
}

// Quantity is something recorded of published smelts.
type Quantity string

// What is recorded of enough of them.
const (
	OreToCharcoal Quantity = "ore to charcoal" // kg/kg over the whole smelt
	Air           Quantity = "air"             // l/min
	Interval      Quantity = "interval"        // min from charge to charge
)

var trends = []Trend{{OreToCharcoal, 11, -0.43}, {Air, 5, -0.50}, {Interval, 10, -0.32}}

// turns is which way each choice turns what was recorded.
var turns = map[Name]map[Quantity]float64{
	MoreBlast: {Air: 1, Interval: -1}, LessBlast: {Air: -1, Interval: 1}, LessOre: {OreToCharcoal: -1}, MoreOre: {OreToCharcoal: 1},
}

// Against are the trends of published smelts that go the other way than the model's opinion of a choice: where it sees less cold,
// or less ore left, they have less bloom an ore, and the other way round.
func (o Outcome) Against() (all []Trend) {
	worse := direction(o.ColdChange.P50, o.LeftMore.P50)
	for _, t := range trends {
		if yields := turns[o.Name][t.With] * t.Rank; yields*float64(worse) > 0 {
			all = append(all, t)
		}
	}
	return all
}

// ByChance tells whether so strong a trend among so few smelts comes of chance more often than once in twenty.
func (t Trend) ByChance() bool { return t.Rank*t.Rank*float64(t.Smelts-1) < 1.96*1.96 }
