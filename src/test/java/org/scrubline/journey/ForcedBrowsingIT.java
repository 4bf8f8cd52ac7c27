package org.scrubline.journey;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.net.URI;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.function.UnaryOperator;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

/**
 * Every mapped route, of docs/access-matrix.csv, which another test holds equal to the mapping: under other spellings by
 * nobody and by a trainee, and every change without the token of its form.
 */
class ForcedBrowsingIT {

    private static final ServerProcess SERVER = DemoServer.shared();
    private static final URI ADDRESS = URI.create(SERVER.address());
    private static final String SOME_ID = "00000000-0000-4000-8000-000000000000";

    /** Pages for people who are not logged in. */
    private static final Set<String> OPEN = Set.of(
            "/login",
            "/login/help",
            "/login/new-password",
            "/welcome",
            "/at-the-table",
            "/at-the-table/session",
            "/service-worker.js",
            "/manifest.webmanifest");

    private static final List<UnaryOperator<String>> SPELLINGS = List.of(
            path -> path,
            path -> path + ";jsessionid=0",
            path -> "/x/..;" + path,
            path -> path + "/",
            path -> path.toUpperCase(Locale.ROOT),
            path -> path + ".json",
            path -> "/%25" + Integer.toHexString(path.charAt(1)) + path.substring(2),
            path -> "/css/%2e%2e" + path);

    private record Route(String method, String path) {}

    @Test
    void nobodyGetsPastTheLogInUnderAnySpellingOfAnyRoute() throws IOException {
        List<String> wrong = new ArrayList<>();
        int asked = 0;
        for (Route route : routes("GET")) {
            for (UnaryOperator<String> spelling : SPELLINGS) {
                String path = spelling.apply(route.path());
                for (String method : path.equals(route.path()) ? List.of("GET", "HEAD") : List.of("GET")) {
                    RawRequest.Answer answer = RawRequest.send(ADDRESS, method, path, Map.of());
                    asked++;
                    if (!refused(route, answer)) {
                        wrong.add(method + " " + path + ": " + answer.status());
                    }
                }
            }
        }
        System.out.printf("Forced browsing: %d requests by nobody%n", asked);
        assertThat(wrong).isEmpty();
    }

    private static boolean refused(Route route, RawRequest.Answer answer) {
        boolean told =
                answer.body().contains("<div class=\"who\"") || answer.body().contains("Exception");
        boolean opened = answer.status() == 200 && !OPEN.contains(route.path());
        return answer.status() < 500 && !told && !opened;
    }

    @Test
    void noOtherSpellingOpensATraineeWhatTheRouteItselfDoesNot() throws IOException {
        Map<String, String> trainee =
                Map.of("Cookie", Visitor.loggedIn(SERVER, "hallinor").cookie());
        List<String> wrong = new ArrayList<>();
        List<Route> routes = routes("GET").stream()
                .filter(route -> !route.path().matches(".*\\.(csv|pdf|jsonl?|txt)"))
                .toList();
        for (int i = 0; i < routes.size(); i++) {
            String path = routes.get(i).path();
            int plain = RawRequest.get(ADDRESS, path, trainee).status();
            for (int turn = 0; turn < 2; turn++) {
                String other = SPELLINGS
                        .get(1 + (2 * i + turn) % (SPELLINGS.size() - 1))
                        .apply(path);
                int status = RawRequest.get(ADDRESS, other, trainee).status();
                if (status >= 500 || (status == 200 && plain != 200)) {
                    wrong.add(other + ": " + status + ", plainly " + plain);
                }
            }
        }
        assertThat(wrong).isEmpty();
    }

    @Test
    void noRouteChangesAnythingWithoutTheTokenOfItsForm() throws IOException {
        Visitor trainee = Visitor.loggedIn(SERVER, "hallinor");
        List<String> wrong = new ArrayList<>();
        for (String method : List.of("POST", "PUT", "PATCH", "DELETE")) {
            for (Route route : routes(method)) {
                int expected = route.path().startsWith("/scim/") ? 401 : 403;
                int without = trainee.sendWithToken(method, route.path(), "text/plain", "")
                        .statusCode();
                int foreign = trainee.sendWithToken(
                                method,
                                route.path(),
                                "application/x-www-form-urlencoded",
                                "not-the-token-of-this-session")
                        .statusCode();
                if (without != expected || foreign != expected) {
                    wrong.add(method + " " + route.path() + ": " + without + ", " + foreign);
                }
            }
        }
        assertThat(wrong).isEmpty();
    }

    private static List<Route> routes(String method) throws IOException {
        try (Stream<String> lines = Files.lines(Path.of("docs", "access-matrix.csv"))) {
            return lines.map(line -> line.split(",", -1))
                    .filter(cells -> cells[0].equals(method))
                    .map(cells -> new Route(method, filled(cells[1])))
                    .filter(route -> route.path().length() > 1)
                    .distinct()
                    .toList();
        }
    }

    /** With the first of the words a variable allows, else an id nobody has. */
    private static String filled(String route) {
        return route.replaceAll("\\{\\w+:([^|}]+)[^}]*}", "$1").replaceAll("\\{\\w+}", SOME_ID);
    }
}
