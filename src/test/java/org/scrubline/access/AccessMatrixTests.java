package org.scrubline.access;

import static org.assertj.core.api.Assertions.assertThat;
import static org.springframework.security.test.web.servlet.request.SecurityMockMvcRequestPostProcessors.csrf;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.scrubline.access.AccessWorld.Built;
import org.scrubline.platform.Role;
import org.scrubline.platform.SignedIn;
import org.scrubline.platform.TenantScope;
import org.scrubline.support.LogIn;
import org.scrubline.support.ScrublineTest;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.beans.factory.annotation.Qualifier;
import org.springframework.beans.factory.config.AutowireCapableBeanFactory;
import org.springframework.mock.web.MockHttpServletResponse;
import org.springframework.test.web.servlet.MockMvc;
import org.springframework.transaction.support.TransactionTemplate;
import org.springframework.web.servlet.mvc.method.annotation.RequestMappingHandlerMapping;

/**
 * docs/access-matrix.csv is the data of this test: every mapped route, every role, every relation to the records. What a
 * request changes is rolled back before the next one, so that all of them meet the same records.
 */
@ScrublineTest
class AccessMatrixTests {

    private static final Path ACTUAL = Path.of("target", "access-matrix.csv");

    @Autowired
    MockMvc mvc;

    @Autowired
    @Qualifier("requestMappingHandlerMapping")
    RequestMappingHandlerMapping mapping;

    @Autowired
    AutowireCapableBeanFactory beans;

    @Autowired
    TransactionTemplate transaction;

    Built built;

    @BeforeEach
    void build() {
        built = beans.createBean(AccessWorld.class).build();
    }

    @Test
    void everyMappedRouteHasItsLines() {
        Map<String, Set<Relation>> written = new LinkedHashMap<>();
        MatrixRow.all()
                .forEach(row -> written.computeIfAbsent(row.mapping(), route -> new LinkedHashSet<>())
                        .addAll(row.relations()));

        assertThat(written.keySet()).isEqualTo(MappedRoutes.of(mapping));
        assertThat(written)
                .allSatisfy((route, relations) -> assertThat(relations)
                        .as("relations of %s", route)
                        .containsExactlyInAnyOrder(Relation.values()));
    }

    @Test
    void everyCellAnswersAsWrittenAndNoForeignPageShowsTheProgramme() throws IOException {
        List<String> wrong = new ArrayList<>();
        List<String> actual = new ArrayList<>(List.of(MatrixRow.heading()));
        int cells = 0;
        int shown = 0;
        for (MatrixRow row : MatrixRow.all()) {
            for (Relation relation : row.relations()) {
                Map<Role, Integer> answers = new EnumMap<>(Role.class);
                for (Role role : Role.values()) {
                    if (built.person(relation, role).isEmpty()) {
                        continue;
                    }
                    MockHttpServletResponse answer =
                            ask(row, built.person(relation, role).orElseThrow());
                    boolean shows = answer.getContentAsString().contains(AccessWorld.MARK);
                    answers.put(role, answer.getStatus());
                    cells++;
                    shown += shows ? 1 : 0;
                    if (shows && relation.foreign()) {
                        wrong.add("%s shows the programme to %s %s".formatted(row.mapping(), relation, role));
                    }
                }
                compare(row, relation, answers, wrong);
                actual.add(row.written(relation, answers));
            }
        }
        Files.write(ACTUAL, actual);
        System.out.printf("Access matrix: %d cells, %d of them show the programme's records%n", cells, shown);
        assertThat(wrong).isEmpty();
        assertThat(shown).isGreaterThan(60);
    }

    private static void compare(MatrixRow row, Relation relation, Map<Role, Integer> answers, List<String> wrong) {
        answers.forEach((role, status) -> {
            Integer expected = row.expected().get(role);
            if (!status.equals(expected)) {
                wrong.add("%s for %s %s: %s, written is %s"
                        .formatted(row.mapping(), relation.written(), role, status, expected));
            }
        });
    }

    /** Reading changes nothing but who looked, and that is told after the transaction: it needs none to roll back. */
    private MockHttpServletResponse ask(MatrixRow row, SignedIn who) {
        if (row.method().equals("GET")) {
            return answer(row, who);
        }
        return TenantScope.call(
                who.tenantId(),
                () -> transaction.execute(status -> {
                    status.setRollbackOnly();
                    return answer(row, who);
                }));
    }

    private MockHttpServletResponse answer(MatrixRow row, SignedIn who) {
        try {
            return mvc.perform(row.request(built.objects()).with(LogIn.as(who)).with(csrf()))
                    .andReturn()
                    .getResponse();
        } catch (Exception e) {
            throw new AssertionError(row.mapping() + " as " + who.printedName(), e);
        }
    }
}
