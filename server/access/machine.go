package access

import (
	"net"
	"net/netip"
	"os"
	"strings"
)

// MachineNames lists what this machine is called on its networks: its host name, the name that phones find it by
// without a name server, and its addresses.
func MachineNames() []string {
	var names []string
	if name, err := os.Hostname(); err == nil && name != "" {
		name = strings.ToLower(name)
		short, _, _ := strings.Cut(name, ".")
		names = append(names, name, short, short+".local")
	}
	addresses, err := net.InterfaceAddrs()
	if err != nil {
		return names
	}
	for _, address := range addresses {
		if network, ok := address.(*net.IPNet); ok {
			if ip, ok := netip.AddrFromSlice(network.IP); ok {
				names = append(names, ip.Unmap().String())
			}
		}
	}
	return names
}
