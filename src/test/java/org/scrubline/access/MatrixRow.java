package org.scrubline.access;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import org.scrubline.platform.Role;
import org.springframework.http.HttpMethod;
import org.springframework.test.web.servlet.request.MockHttpServletRequestBuilder;
import org.springframework.test.web.servlet.request.MockMvcRequestBuilders;

/**
 * One line of docs/access-matrix.csv.
 *
 * @param method the HTTP method
 * @param route the mapped pattern
 * @param filled what stands in the place of each variable, {@code name=object} with blanks between
 * @param sent form fields without which the request would not be understood, written in the same way
 * @param relations how the person stands to the records
 * @param expected the answer for each role; a role the relation does not have is missing
 */
record MatrixRow(
        String method,
        String route,
        String filled,
        String sent,
        List<Relation> relations,
        Map<Role, Integer> expected) {

    static final Path FILE = Path.of("docs", "access-matrix.csv");
    private static final int FIRST_ROLE = 5;
    private static final String NONE = "-";

    MatrixRow {
        relations = List.copyOf(relations);
        expected = Map.copyOf(expected);
    }

    static String heading() {
        return "method,route,filled,sent,relations,"
                + Arrays.stream(Role.values()).map(Role::name).collect(Collectors.joining(","));
    }

    static List<MatrixRow> all() {
        try {
            List<String> lines = Files.readAllLines(FILE);
            if (!lines.get(0).equals(heading())) {
                throw new IllegalStateException("the columns of " + FILE + " must be " + heading());
            }
            return lines.stream().skip(1).map(MatrixRow::read).toList();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static MatrixRow read(String line) {
        List<String> cells = List.of(line.split(",", -1));
        Map<Role, Integer> expected = new LinkedHashMap<>();
        for (Role role : Role.values()) {
            String cell = cells.get(FIRST_ROLE + role.ordinal());
            if (!cell.equals(NONE)) {
                expected.put(role, Integer.valueOf(cell));
            }
        }
        return new MatrixRow(
                cells.get(0),
                cells.get(1),
                cells.get(2),
                cells.get(3),
                Arrays.stream(cells.get(4).split(" ")).map(Relation::of).toList(),
                expected);
    }

    /** The mapping this line is about, as {@link MappedRoutes} prints it. */
    String mapping() {
        return method + " " + route;
    }

    /** What a request of this line carries in its path and its form. */
    MockHttpServletRequestBuilder request(Map<String, String> objects) {
        String path = route;
        for (Map.Entry<String, String> variable : pairs(filled).entrySet()) {
            String value = objects.getOrDefault(variable.getValue(), variable.getValue());
            path = path.replaceAll("\\{" + variable.getKey() + "(:[^}]*)?}", value);
        }
        MockHttpServletRequestBuilder request = MockMvcRequestBuilders.request(HttpMethod.valueOf(method), path);
        pairs(sent).forEach((name, value) -> request.param(name, objects.getOrDefault(value, value)));
        return request;
    }

    private static Map<String, String> pairs(String written) {
        Map<String, String> pairs = new LinkedHashMap<>();
        for (String pair : written.split(" ")) {
            if (!pair.isEmpty()) {
                pairs.put(pair.substring(0, pair.indexOf('=')), pair.substring(pair.indexOf('=') + 1));
            }
        }
        return pairs;
    }

    /** This line for one relation with these answers, as the file writes it. */
    String written(Relation relation, Map<Role, Integer> answers) {
        return String.join(",", method, route, filled, sent, relation.written())
                + ","
                + Arrays.stream(Role.values())
                        .map(role -> answers.containsKey(role) ? String.valueOf(answers.get(role)) : NONE)
                        .collect(Collectors.joining(","));
    }
}
