package org.scrubline.table;

import com.sun.net.httpserver.HttpExchange;
import com.sun.net.httpserver.HttpServer;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.net.InetAddress;
import java.net.InetSocketAddress;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.concurrent.CopyOnWriteArrayList;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.Executors;
import java.util.concurrent.TimeUnit;

/** The network between a browser and the server, which can fail in every way a network does. */
final class Wire implements AutoCloseable {

    /** What happens to a request. */
    enum Fault {
        /** It never arrives. */
        LOST,
        /** It arrives and is done; its answer never comes back. */
        ANSWER_LOST,
        /** It arrives and is done; a gateway says that it took too long. */
        GATEWAY_TIMEOUT,
        /** The network answers itself, with a page of its own, that all is well. */
        CAPTIVE
    }

    private static final Set<String> OWN_HEADERS =
            Set.of("host", "connection", "content-length", "transfer-encoding", "upgrade", "expect");
    private static final String PORTAL = "<!DOCTYPE html><title>Guest network</title><p>Welcome. Accept our terms.";

    private final HttpServer server;
    private final HttpClient client = HttpClient.newBuilder()
            .version(HttpClient.Version.HTTP_1_1)
            .followRedirects(HttpClient.Redirect.NEVER)
            .build();
    private final int upstream;
    private final List<Trouble> troubles = new CopyOnWriteArrayList<>();
    private final List<Held> holds = new CopyOnWriteArrayList<>();
    private final List<String> seen = new CopyOnWriteArrayList<>();
    private volatile boolean cut;

    private static final class Trouble {
        private final String path;
        private final Fault fault;
        private int times;

        Trouble(String path, Fault fault, int times) {
            this.path = path;
            this.fault = fault;
            this.times = times;
        }

        synchronized boolean takes(String requested) {
            if (times == 0 || !requested.endsWith(path)) {
                return false;
            }
            times--;
            return true;
        }
    }

    Wire(int upstream) {
        this(0, upstream);
    }

    /** Listens on the port given, which a page's address may depend on; 0 for any. */
    Wire(int port, int upstream) {
        this.upstream = upstream;
        try {
            server = HttpServer.create(new InetSocketAddress(InetAddress.getLoopbackAddress(), port), 0);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        server.createContext("/", this::carry);
        server.setExecutor(Executors.newCachedThreadPool());
        server.start();
    }

    String address(String path) {
        return "http://localhost:" + server.getAddress().getPort() + path;
    }

    /** From now on nothing gets through, until it is mended. */
    void cut() {
        cut = true;
    }

    void mend() {
        cut = false;
    }

    /** What happens to the next requests whose path ends so. */
    void next(Fault fault, String path, int times) {
        troubles.add(new Trouble(path, fault, times));
    }

    /** Carries the next request whose path ends so at once, and keeps its answer back until it is let go. */
    Held hold(String path) {
        Held held = new Held(new Trouble(path, Fault.ANSWER_LOST, 1), new CountDownLatch(1), new CountDownLatch(1));
        holds.add(held);
        return held;
    }

    /** An answer on its way that has not come yet. */
    record Held(Trouble which, CountDownLatch made, CountDownLatch go) {

        /** Returns once the server has answered. */
        void awaitAnswer() {
            await(made);
        }

        void letGo() {
            go.countDown();
        }

        private void answered() {
            made.countDown();
            await(go);
        }

        private static void await(CountDownLatch latch) {
            try {
                if (!latch.await(30, TimeUnit.SECONDS)) {
                    throw new IllegalStateException("nothing came");
                }
            } catch (InterruptedException e) {
                Thread.currentThread().interrupt();
                throw new IllegalStateException(e);
            }
        }
    }

    /** How many requests with such a path have come so far, whatever became of them. */
    long count(String path) {
        return seen.stream().filter(one -> one.endsWith(path)).count();
    }

    private void carry(HttpExchange exchange) throws IOException {
        try (exchange) {
            String path = exchange.getRequestURI().getPath();
            seen.add(path);
            byte[] body = exchange.getRequestBody().readAllBytes();
            Fault fault = troubles.stream()
                    .filter(trouble -> trouble.takes(path))
                    .map(trouble -> trouble.fault)
                    .findFirst()
                    .orElse(null);
            if (cut || fault == Fault.LOST) {
                return;
            }
            if (fault == Fault.CAPTIVE) {
                answer(exchange, 200, Map.of("Content-Type", List.of("text/html")), text(PORTAL));
                return;
            }
            HttpResponse<byte[]> response = forward(exchange, body);
            holds.stream().filter(held -> held.which().takes(path)).forEach(Held::answered);
            if (fault == Fault.GATEWAY_TIMEOUT) {
                answer(exchange, 504, Map.of("Content-Type", List.of("text/html")), text("<p>Gateway timeout"));
            } else if (fault == null) {
                answer(exchange, response.statusCode(), response.headers().map(), response.body());
            }
        }
    }

    private HttpResponse<byte[]> forward(HttpExchange exchange, byte[] body) throws IOException {
        URI target = URI.create("http://localhost:" + upstream + exchange.getRequestURI());
        HttpRequest.Builder request = HttpRequest.newBuilder(target)
                .method(exchange.getRequestMethod(), HttpRequest.BodyPublishers.ofByteArray(body));
        exchange.getRequestHeaders().forEach((name, values) -> {
            if (!OWN_HEADERS.contains(name.toLowerCase(java.util.Locale.ROOT))) {
                values.forEach(value -> request.header(name, value));
            }
        });
        try {
            return client.send(request.build(), HttpResponse.BodyHandlers.ofByteArray());
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            throw new IOException(e);
        }
    }

    /** The server names itself in redirects; on this side of the wire it has another address. */
    private String here(String value) {
        return value.replace("http://localhost:" + upstream + "/", "/");
    }

    private void answer(HttpExchange exchange, int status, Map<String, List<String>> headers, byte[] body)
            throws IOException {
        headers.forEach((name, values) -> {
            if (!OWN_HEADERS.contains(name.toLowerCase(java.util.Locale.ROOT)) && !name.startsWith(":")) {
                values.forEach(value -> exchange.getResponseHeaders().add(name, here(value)));
            }
        });
        boolean bare = exchange.getRequestMethod().equals("HEAD") || status == 304 || status == 204 || body.length == 0;
        exchange.sendResponseHeaders(status, bare ? -1 : body.length);
        if (!bare) {
            exchange.getResponseBody().write(body);
        }
    }

    private static byte[] text(String html) {
        return html.getBytes(StandardCharsets.UTF_8);
    }

    @Override
    public void close() {
        server.stop(0);
        if (server.getExecutor() instanceof java.util.concurrent.ExecutorService service) {
            service.shutdownNow();
            try {
                service.awaitTermination(5, TimeUnit.SECONDS);
            } catch (InterruptedException e) {
                Thread.currentThread().interrupt();
            }
        }
    }
}
