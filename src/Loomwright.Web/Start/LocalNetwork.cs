using System.Net;
using System.Net.NetworkInformation;
using System.Net.Sockets;

namespace Loomwright.Web.Start;

/// <summary>This machine in the network the phone is in too.</summary>
public static class LocalNetwork
{
    /// <summary>The address to be found under: of a network with a way out if there is one. Null when this machine is in none.</summary>
    public static IPAddress? Address() => NetworkInterface.GetAllNetworkInterfaces()
        .Where(n => n.OperationalStatus == OperationalStatus.Up && n.NetworkInterfaceType != NetworkInterfaceType.Loopback)
        .Select(n => n.GetIPProperties())
        .OrderBy(p => p.GatewayAddresses.Count == 0)
        .SelectMany(p => p.UnicastAddresses)
        .Select(a => a.Address)
        .FirstOrDefault(a => a.AddressFamily == AddressFamily.InterNetwork);

    /// <summary>Whether the network knows this machine under that address.</summary>
    public static bool Has(IPAddress address)
    {
        try
        {
            using var tried = new TcpListener(address, 0);
            tried.Start();
            return !address.Equals(IPAddress.Loopback);
        }
        catch (SocketException)
        {
            return false;
        }
    }

    /// <summary>A port nothing listens on now.</summary>
    internal static int FreePort()
    {
        using var any = new TcpListener(IPAddress.Any, 0);
        any.Start();
        return ((IPEndPoint)any.LocalEndpoint).Port;
    }
}
