//! Which address has this machine in its local network, and does another one belong to it?

use std::net::{IpAddr, Ipv6Addr, UdpSocket};

/// True for addresses that no router carries beyond the local network (RFC 1918, RFC 3927, RFC 4193, RFC 4291) and for this
/// machine itself.
pub fn is_local(address: IpAddr) -> bool {
    match address {
        IpAddr::V4(a) => a.is_private() || a.is_link_local() || a.is_loopback(),
        IpAddr::V6(a) => match a.to_ipv4_mapped() {
            Some(a) => is_local(IpAddr::V4(a)),
            None => a == Ipv6Addr::LOCALHOST || a.is_unique_local() || a.is_unicast_link_local(),
        },
    }
}

/// This machine's address in the local network, if it has one that stays inside.
pub fn own_address() -> Option<IpAddr> {
    // Connecting a datagram socket sends nothing: the system only chooses the address it would send from.
    ["192.168.0.1:9", "10.0.0.1:9", "172.16.0.1:9"].iter().find_map(|towards| {
        let socket = UdpSocket::bind("0.0.0.0:0").ok()?;
        socket.connect(towards).ok()?;
        let own = socket.local_addr().ok()?.ip();
        (is_local(own) && !own.is_loopback()).then_some(own)
    })
}

#[cfg(test)]
#[allow(clippy::unwrap_used)]
mod tests {
    use super::*;

    #[test]
    fn the_borders_of_the_local_ranges_are_kept() {
        let local = [
            "10.0.0.0",
            "10.255.255.255",
            "172.16.0.1",
            "172.31.255.255",
            "192.168.1.1",
            "169.254.1.1",
            "127.0.0.1",
            "::1",
            "fe80::1",
            "fd00::1",
            "::ffff:192.168.1.1",
        ];
        let beyond = [
            "9.255.255.255",
            "11.0.0.0",
            "172.15.255.255",
            "172.32.0.0",
            "192.169.0.0",
            "8.8.8.8",
            "2001:db8::1",
            "::ffff:8.8.8.8",
            "0.0.0.0",
        ];
        for a in local {
            assert!(is_local(a.parse().unwrap()), "{a}");
        }
        for a in beyond {
            assert!(!is_local(a.parse().unwrap()), "{a}");
        }
    }
}
