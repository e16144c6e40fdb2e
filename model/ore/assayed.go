package ore

import (
	"time"

	"chargehand/model/entry"
)

// Assayed is the iron that an assay found in a lot, as a share of its dry mass, and when that
// was written down.
type Assayed struct {
	At   time.Time
	Lot  entry.UID
	Iron entry.Share
}
