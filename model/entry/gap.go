package entry

// Gap is a place where entries of a stream are lost.
type Gap struct {
	After  uint64 `json:"after_seq"`  // the last entry before it, 0 for none
	Before uint64 `json:"before_seq"` // the first after it, which may not have been keyed yet
	Why    string `json:"why"`
	Head   string `json:"after_hash,omitempty"` // of the line of After; the link that named it is lost too
	Unsure bool   `json:"unsure,omitempty"`     // nothing tells that the entry After is as it was kept
}
