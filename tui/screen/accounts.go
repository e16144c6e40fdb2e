package screen

import (
	"chargehand/model/account"
	"chargehand/model/entry"
	"chargehand/model/session"
)

// Accounts remembers the account of the smelt last asked for: to solve its balances takes
// longer than a frame.
type Accounts struct {
	smelt     string
	len, home int
	account   account.Account
	err       error
}

// AccountOf is where the iron of a smelt went, as far as all that is known of it tells.
func (sh *Shared) AccountOf(s session.Session) (account.Account, error) {
	home := sh.Home.Lines()
	last := sh.Accounts
	if last == nil {
		last = new(Accounts)
	}
	if now := (Accounts{smelt: s.ID(), len: s.Len(), home: len(home)}); last.smelt != now.smelt || last.len != now.len || last.home != now.home {
		var h []entry.Entry
		for _, l := range home {
			if !l.Struck() {
				e := l.Entry
				e.Event, e.Happened = l.Event, l.Happened
				h = append(h, e)
			}
		}
		now.account, now.err = account.Of(account.Read(s.Entries(), h))
		*last = now
	}
	return last.account, last.err
}
