package truth

// Setting is how a furnace is built, loaded and worked, apart from what answers in it: a crew goes by it, or is as it says.
// The names are those of the rows of Table.
type Setting struct {
	BoreCm, StackCm, WallCm, TuyereBaseCm, BlastPerArea, OreKg, OreStart float64
	BoreOff, BucketOff, Moisture, CharcoalBulk, OreIron, OreMoisture     float64
	Misread, MarkScatter, DipScatter, CrewLate, LookEvery                float64
}

// Setting of this furnace.
func (f *Furnace) Setting() Setting {
	d := &f.Drawn
	return Setting{
		BoreCm: d.BoreCm, StackCm: d.StackCm, WallCm: d.WallCm, TuyereBaseCm: d.TuyereBaseCm, BlastPerArea: d.BlastPerArea, OreKg: d.OreKg, OreStart: d.OreStart,
		BoreOff: d.BoreOff, BucketOff: d.BucketOff, Moisture: d.Moisture, CharcoalBulk: d.CharcoalBulk, OreIron: d.OreIron, OreMoisture: d.OreMoisture,
		Misread: d.Misread, MarkScatter: d.MarkScatter, DipScatter: d.DipScatter, CrewLate: d.CrewLate, LookEvery: d.LookEvery,
	}
}
