package org.scrubline.journey;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.net.Socket;
import java.net.URI;
import java.nio.charset.StandardCharsets;
import java.util.Map;
import java.util.stream.Collectors;

/** One request written to the socket letter by letter: HTTP clients tidy a path up before they send it. */
final class RawRequest {

    private static final int PATIENCE_MS = 60_000;

    private RawRequest() {}

    /** What came back; headers as one text. */
    record Answer(int status, String headers, String body) {}

    static Answer get(URI server, String path, Map<String, String> headers) {
        return send(server, "GET", path, headers);
    }

    static Answer send(URI server, String method, String path, Map<String, String> headers) {
        String lines = headers.entrySet().stream()
                .map(header -> header.getKey() + ": " + header.getValue() + "\r\n")
                .collect(Collectors.joining());
        String host = headers.containsKey("Host") ? "" : "Host: " + server.getAuthority() + "\r\n";
        // Version 1.0, so that the body comes in one piece and ends with the connection.
        String accept = headers.containsKey("Accept") ? "" : "Accept: text/html\r\n";
        String request = method + " " + path + " HTTP/1.0\r\n" + host + lines + accept + "\r\n";
        try (Socket socket = new Socket(server.getHost(), server.getPort())) {
            socket.setSoTimeout(PATIENCE_MS);
            socket.getOutputStream().write(request.getBytes(StandardCharsets.ISO_8859_1));
            socket.getOutputStream().flush();
            return read(new String(socket.getInputStream().readAllBytes(), StandardCharsets.UTF_8));
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static Answer read(String answer) {
        int end = answer.indexOf("\r\n\r\n");
        String head = end < 0 ? answer : answer.substring(0, end);
        return new Answer(
                Integer.parseInt(head.split(" ")[1]), head, end < 0 ? "" : answer.substring(end + "\r\n\r\n".length()));
    }
}
