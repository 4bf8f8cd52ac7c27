package org.scrubline.support;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.io.PrintWriter;
import java.net.InetAddress;
import java.net.ServerSocket;
import java.net.Socket;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.concurrent.CopyOnWriteArrayList;

/** A mail server on the loopback address that takes every message (RFC 5321, the commands a client needs). */
public final class SmtpReceiver implements AutoCloseable {

    private final ServerSocket socket;
    private final List<String> received = new CopyOnWriteArrayList<>();

    public SmtpReceiver() throws IOException {
        socket = new ServerSocket(0, 5, InetAddress.getLoopbackAddress());
        Thread thread = new Thread(this::serve, "smtp-receiver");
        thread.setDaemon(true);
        thread.start();
    }

    public int port() {
        return socket.getLocalPort();
    }

    /** Each message with its envelope, as it came. */
    public List<String> received() {
        return received;
    }

    private void serve() {
        while (!socket.isClosed()) {
            try (Socket client = socket.accept()) {
                talk(client);
            } catch (IOException e) {
                // The test is over, or the client went away.
            }
        }
    }

    private void talk(Socket client) throws IOException {
        BufferedReader in = new BufferedReader(new InputStreamReader(client.getInputStream(), StandardCharsets.UTF_8));
        PrintWriter out = new PrintWriter(client.getOutputStream(), true, StandardCharsets.UTF_8);
        StringBuilder message = new StringBuilder();
        out.print("220 receiver\r\n");
        out.flush();
        for (String line = in.readLine(); line != null; line = in.readLine()) {
            message.append(line).append('\n');
            if (line.equals("DATA")) {
                answer(out, "354 go on");
                for (String text = in.readLine(); !".".equals(text); text = in.readLine()) {
                    message.append(text).append('\n');
                }
                received.add(message.toString());
                answer(out, "250 taken");
            } else if (line.equals("QUIT")) {
                answer(out, "221 bye");
                return;
            } else {
                answer(out, "250 ok");
            }
        }
    }

    private static void answer(PrintWriter out, String line) {
        out.print(line + "\r\n");
        out.flush();
    }

    @Override
    public void close() throws IOException {
        socket.close();
    }
}
