package entry

// Gap is a place in a stream where entries are lost: those after After and before
// Before.
type Gap struct{ After, Before uint64 }
