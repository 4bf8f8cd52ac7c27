package org.scrubline.access;

import static org.assertj.core.api.Assertions.assertThat;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.get;

import java.sql.SQLException;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Set;
import java.util.TreeMap;
import java.util.UUID;
import java.util.stream.Collectors;
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
import org.springframework.core.NestedExceptionUtils;
import org.springframework.http.ResponseEntity;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.security.authentication.UsernamePasswordAuthenticationToken;
import org.springframework.security.core.Authentication;
import org.springframework.security.core.context.SecurityContextHolder;
import org.springframework.security.web.csrf.CsrfToken;
import org.springframework.security.web.csrf.DefaultCsrfToken;
import org.springframework.test.web.servlet.MockMvc;
import org.springframework.test.web.servlet.setup.MockMvcBuilders;
import org.springframework.transaction.support.TransactionTemplate;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.context.WebApplicationContext;
import org.springframework.web.servlet.mvc.method.RequestMappingInfo;
import org.springframework.web.servlet.mvc.method.annotation.RequestMappingHandlerMapping;

/**
 * The second wall alone. Every check of the application is led to say yes: no security chain stands before the pages,
 * and the person who asks is forged with the ids of the record's own people and every role in their programme. Only the
 * organisation of the request is another one, and that the database must notice.
 */
@ScrublineTest
class DatabaseWallTests {

    /** The database's code for a row that names another which is not there. */
    private static final String FOREIGN_KEY = "23503";

    @Autowired
    WebApplicationContext context;

    @Autowired
    MockMvc mvc;

    @Autowired
    @Qualifier("requestMappingHandlerMapping")
    RequestMappingHandlerMapping mapping;

    @Autowired
    AutowireCapableBeanFactory beans;

    @Autowired
    TransactionTemplate transaction;

    @Autowired
    JdbcClient jdbc;

    Built built;
    MockMvc unguarded;

    @BeforeEach
    void build() {
        built = beans.createBean(AccessWorld.class).build();
        unguarded = MockMvcBuilders.webAppContextSetup(context).build();
    }

    @Test
    void withEveryCheckFooledNoRowLeavesItsOrganisation() throws Exception {
        UUID home = person(Relation.OWN, Role.SUPERVISOR).tenantId();
        UUID abroad = person(Relation.OTHER_ORGANISATION, Role.SUPERVISOR).tenantId();
        List<String> leaks = new ArrayList<>();
        int owners = 0;
        for (MatrixRow row : reads()) {
            for (SignedIn who : List.of(person(Relation.OWN, Role.SUPERVISOR), person(Relation.OWN, Role.TRAINEE))) {
                owners += shows(row, forged(who, home)) ? 1 : 0;
                if (shows(row, forged(who, abroad))) {
                    leaks.add(row.mapping());
                }
            }
        }
        System.out.printf("The database's wall alone: %d pages show the owner rows, %d leak%n", owners, leaks.size());
        assertThat(leaks).isEmpty();
        assertThat(owners).isGreaterThan(40);
    }

    @Test
    void aRouteThatForgetsToCheckIsCaughtByBothWalls() throws Exception {
        RequestMappingInfo route = RequestMappingInfo.paths("/unguarded/{id}")
                .options(mapping.getBuilderConfiguration())
                .build();
        mapping.registerMapping(route, new Unguarded(), Unguarded.class.getDeclaredMethod("name", UUID.class));
        try {
            assertThat(MappedRoutes.of(mapping)).contains("ANY /unguarded/{id}");
            assertThat(MatrixRow.all()).noneMatch(row -> row.route().equals("/unguarded/{id}"));

            assertThat(asked(person(Relation.OWN, Role.SUPERVISOR))).contains(AccessWorld.MARK);
            assertThat(asked(person(Relation.OTHER_PROGRAMME, Role.TRAINEE)))
                    .as("the matrix counts this as a page that shows the programme to a stranger")
                    .contains(AccessWorld.MARK);
            assertThat(asked(person(Relation.OTHER_ORGANISATION, Role.DIRECTOR)))
                    .isEqualTo("[]");
        } finally {
            mapping.unregisterMapping(route);
        }
    }

    /** Reads a name with no look at who asks. */
    private final class Unguarded {

        ResponseEntity<String> name(@PathVariable UUID id) {
            List<String> names =
                    transaction.execute(status -> jdbc.sql("select printed_name from person where id = :id")
                            .param("id", id)
                            .query(String.class)
                            .list());
            return ResponseEntity.ok(String.valueOf(names));
        }
    }

    private String asked(SignedIn who) throws Exception {
        String path = "/unguarded/" + built.objects().get("trainee");
        return mvc.perform(get(path).with(LogIn.as(who)))
                .andReturn()
                .getResponse()
                .getContentAsString();
    }

    private static List<MatrixRow> reads() {
        return MatrixRow.all().stream()
                .filter(row -> row.method().equals("GET"))
                .collect(Collectors.toMap(
                        row -> row.route() + row.filled(), row -> row, (one, same) -> one, TreeMap::new))
                .values()
                .stream()
                .toList();
    }

    private boolean shows(MatrixRow row, SignedIn who) throws Exception {
        Authentication token = UsernamePasswordAuthenticationToken.authenticated(who, null, List.of());
        SecurityContextHolder.getContext().setAuthentication(token);
        try {
            return TenantScope.call(who.tenantId(), () -> body(row, token)).contains(AccessWorld.MARK);
        } finally {
            SecurityContextHolder.clearContext();
        }
    }

    private String body(MatrixRow row, Authentication who) {
        try {
            CsrfToken token = new DefaultCsrfToken("X-CSRF-TOKEN", "_csrf", "none");
            return unguarded
                    .perform(row.request(built.objects())
                            .principal(who)
                            .requestAttr("_csrf", token)
                            .requestAttr(CsrfToken.class.getName(), token))
                    .andReturn()
                    .getResponse()
                    .getContentAsString();
        } catch (Exception e) {
            if (NestedExceptionUtils.getMostSpecificCause(e) instanceof SQLException refused
                    && FOREIGN_KEY.equals(refused.getSQLState())) {
                return ""; // Whoever looked cannot be written down where they are nobody: stopped by the database.
            }
            throw new AssertionError(row.mapping(), e);
        }
    }

    private static SignedIn forged(SignedIn who, UUID tenant) {
        Set<SignedIn.Grant> all = who.grants().stream()
                .flatMap(grant ->
                        Arrays.stream(Role.values()).map(role -> new SignedIn.Grant(grant.programmeId(), role)))
                .collect(Collectors.toSet());
        return new SignedIn(who.accountId(), "nobody", tenant, "Nowhere", who.personId(), "Nobody", all);
    }

    private SignedIn person(Relation relation, Role role) {
        return built.person(relation, role).orElseThrow();
    }
}
