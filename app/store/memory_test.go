package store_test

import (
	"testing"

	"coilbook/app/store"
	"coilbook/app/store/storetest"
)

func TestMemory(t *testing.T) {
	storetest.Run(t, func(t *testing.T) storetest.Subject {
		m := &store.Memory{}
		return storetest.Subject{Store: m, Put: func(_ *testing.T, session, entry, text string) { m.Put(session, entry, text) }}
	})
}
