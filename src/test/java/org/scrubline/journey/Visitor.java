package org.scrubline.journey;

import java.io.IOException;
import java.net.CookieManager;
import java.net.URI;
import java.net.URLEncoder;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.nio.charset.StandardCharsets;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;

/** A person at the wire: requests a browser would never send, with a session and a token like a browser's. */
final class Visitor {

    private static final Pattern TOKEN = Pattern.compile("name=\"csrf-token\" content=\"([^\"]+)\"");

    private final String address;
    private final CookieManager cookies = new CookieManager();
    private final HttpClient client = HttpClient.newBuilder()
            .cookieHandler(cookies)
            .followRedirects(HttpClient.Redirect.NEVER)
            .build();
    private String token = "";

    Visitor(ServerProcess server) {
        this.address = server.address();
    }

    static Visitor loggedIn(ServerProcess server, String username) {
        Visitor visitor = new Visitor(server);
        visitor.get("/login");
        HttpResponse<String> entered =
                visitor.post("/login", Map.of("username", username, "password", DemoServer.PASSWORD));
        if (!entered.headers().firstValue("location").orElse("").endsWith("/")) {
            throw new AssertionError("could not log in as " + username + ": " + entered.statusCode());
        }
        visitor.get("/rubrics");
        return visitor;
    }

    HttpResponse<String> get(String path) {
        return send(HttpRequest.newBuilder(URI.create(address + path)).GET());
    }

    HttpResponse<String> post(String path, Map<String, String> form) {
        return post(path, form, Map.of());
    }

    private String body(Map<String, String> form) {
        return form.entrySet().stream()
                        .map(field -> encode(field.getKey()) + "=" + encode(field.getValue()))
                        .collect(Collectors.joining("&"))
                + "&_csrf=" + encode(token);
    }

    /** A body as it is, with the token in the header. */
    HttpResponse<String> send(String method, String path, String type, String body) {
        return send(request(path, type)
                .header("X-CSRF-TOKEN", token)
                .method(method, HttpRequest.BodyPublishers.ofString(body)));
    }

    /** The cookies as a header, for a request a client would tidy up. */
    String cookie() {
        return cookies.getCookieStore().getCookies().stream()
                .map(cookie -> cookie.getName() + "=" + cookie.getValue())
                .collect(Collectors.joining("; "));
    }

    /** A form as {@link #post}, with headers of one's own. */
    HttpResponse<String> post(String path, Map<String, String> form, Map<String, String> headers) {
        HttpRequest.Builder request = request(path, "application/x-www-form-urlencoded");
        headers.forEach(request::header);
        return send(request.POST(HttpRequest.BodyPublishers.ofString(body(form))));
    }

    /** A form without any token, as another site would send it. */
    HttpResponse<String> postWithoutToken(String path) {
        return send(
                request(path, "application/x-www-form-urlencoded").POST(HttpRequest.BodyPublishers.ofString("a=b")));
    }

    /** A body with a token the server never gave out; none for an empty one. */
    HttpResponse<String> sendWithToken(String method, String path, String type, String foreign) {
        HttpRequest.Builder request = request(path, type).method(method, HttpRequest.BodyPublishers.ofString("a=b"));
        return send(foreign.isEmpty() ? request : request.header("X-CSRF-TOKEN", foreign));
    }

    private HttpRequest.Builder request(String path, String type) {
        return HttpRequest.newBuilder(URI.create(address + path)).header("Content-Type", type);
    }

    private HttpResponse<String> send(HttpRequest.Builder request) {
        try {
            HttpResponse<String> response =
                    client.send(request.header("Accept", "text/html").build(), HttpResponse.BodyHandlers.ofString());
            Matcher matcher = TOKEN.matcher(response.body());
            if (matcher.find()) {
                token = matcher.group(1);
            }
            return response;
        } catch (IOException e) {
            throw new AssertionError("no answer", e);
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            throw new AssertionError(e);
        }
    }

    private static String encode(String text) {
        return URLEncoder.encode(text, StandardCharsets.UTF_8);
    }
}
