package org.scrubline.doors;

import static org.assertj.core.api.Assertions.assertThat;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.get;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.request;

import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.scrubline.people.People;
import org.scrubline.platform.Role;
import org.scrubline.platform.SignedIn;
import org.scrubline.provision.ProvisionTokens;
import org.scrubline.support.LogIn;
import org.scrubline.support.ScrublineTest;
import org.scrubline.support.TestOrganisations;
import org.scrubline.support.TestOrganisations.TestOrganisation;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.http.HttpMethod;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.mock.web.MockHttpServletResponse;
import org.springframework.test.web.servlet.MockMvc;
import org.springframework.test.web.servlet.request.MockHttpServletRequestBuilder;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;

/** What a directory may send that no good client would: every answer is an error of RFC 7644, section 3.12. */
@ScrublineTest
class DirectoryProtocolTests {

    @Autowired
    MockMvc mockMvc;

    @Autowired
    TestOrganisations organisations;

    @Autowired
    ProvisionTokens tokens;

    @Autowired
    People people;

    @Autowired
    JdbcClient jdbc;

    TestOrganisation organisation;
    UUID somebody;
    String token;

    @BeforeEach
    void open() {
        organisation = organisations.open();
        somebody = organisation.in(() -> people.addWithoutRole(
                        "Ansel Verrin", "v" + UUID.randomUUID().toString().substring(0, 12))
                .orThrow()
                .personId());
        token = organisation.in(() -> tokens.make("directory").orThrow());
    }

    private MockHttpServletResponse send(HttpMethod method, String path, @Nullable String body) throws Exception {
        MockHttpServletRequestBuilder request =
                request(method, "/scim/v2" + path).header("Authorization", "Bearer " + token);
        if (body != null) {
            request.contentType("application/scim+json").content(body.getBytes(StandardCharsets.UTF_8));
        }
        return mockMvc.perform(request).andReturn().getResponse();
    }

    private String own() {
        return "/Users/" + somebody;
    }

    private static void refused(MockHttpServletResponse answer, int status, @Nullable String type) throws Exception {
        assertThat(answer.getStatus()).isEqualTo(status);
        assertThat(answer.getContentType()).startsWith("application/scim+json");
        JsonNode body = JsonMapper.shared().readTree(answer.getContentAsString());
        assertThat(body.get("schemas").get(0).stringValue()).isEqualTo("urn:ietf:params:scim:api:messages:2.0:Error");
        assertThat(body.get("status").stringValue()).isEqualTo(String.valueOf(status));
        assertThat(body.has("scimType") ? body.get("scimType").stringValue() : null)
                .isEqualTo(type);
    }

    @ParameterizedTest
    @ValueSource(strings = {"", "nonsense", "[]", "7", "null", "\"text\"", "{\"userName\":", "{]"})
    void aBodyThatIsNoObjectIsInvalidSyntax(String body) throws Exception {
        refused(send(HttpMethod.POST, "/Users", body), 400, "invalidSyntax");
        refused(send(HttpMethod.PATCH, own(), body), 400, "invalidSyntax");
        refused(send(HttpMethod.PUT, own(), body), 400, "invalidSyntax");
    }

    @Test
    void aBodyTooLongOrTooDeepIsRefused() throws Exception {
        refused(send(HttpMethod.POST, "/Users", "{\"a\":\"" + "x".repeat(70_000) + "\"}"), 413, null);
        refused(send(HttpMethod.POST, "/Users", "{\"a\":" + "[".repeat(5_000)), 400, "invalidSyntax");
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "{\"Operations\":[]} | invalidSyntax",
                "{\"Operations\":{}} | invalidSyntax",
                "{\"Operations\":[7]} | invalidSyntax",
                "{\"Operations\":[{\"op\":\"move\",\"path\":\"active\"}]} | invalidSyntax",
                "{\"Operations\":[{\"op\":\"replace\",\"path\":\"active\"}]} | invalidValue",
                "{\"Operations\":[{\"op\":\"replace\",\"path\":\"active\",\"value\":\"perhaps\"}]} | invalidValue",
                "{\"Operations\":[{\"op\":\"replace\",\"path\":\"active\",\"value\":[]}]} | invalidValue",
                "{\"Operations\":[{\"op\":\"replace\",\"path\":\"externalId\",\"value\":{}}]} | invalidValue",
                "{\"Operations\":[{\"op\":\"replace\",\"path\":\"roles\",\"value\":\"DIRECTOR\"}]} | invalidPath",
                "{\"Operations\":[{\"op\":\"replace\",\"path\":\"id\",\"value\":\"1\"}]} | invalidPath",
                "{\"Operations\":[{\"op\":\"remove\"}]} | noTarget",
                "{\"Operations\":[{\"op\":\"remove\",\"path\":\"userName\"}]} | mutability",
                "{\"Operations\":[{\"op\":\"replace\",\"path\":\"userName\",\"value\":\"another\"}]} | mutability",
                "{\"Operations\":[{\"op\":\"replace\",\"path\":\"displayName\",\"value\":\"Another\"}]} | mutability"
            })
    void aChangeThatCannotBeIsRefusedWithItsType(String body, String type) throws Exception {
        refused(send(HttpMethod.PATCH, own(), body), 400, type);
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "{\"Operations\":[{\"op\":\"Replace\",\"path\":\"active\",\"value\":false}]}",
                "{\"Operations\":[{\"op\":\"replace\",\"path\":\"active\",\"value\":\"False\"}]}",
                "{\"Operations\":[{\"op\":\"add\",\"value\":{\"active\":false,\"title\":\"dropped\"}}]}",
                "{\"Operations\":[{\"op\":\"replace\",\"path\":\"urn:ietf:params:scim:schemas:core:2.0:User:active\",\"value\":false}]}",
                "{\"operations\":[{\"op\":\"replace\",\"path\":\"active\",\"value\":true},"
                        + "{\"op\":\"replace\",\"path\":\"active\",\"value\":false}]}"
            })
    void theWaysDirectoriesSayThatSomebodyLeftAreUnderstood(String body) throws Exception {
        MockHttpServletResponse answer = send(HttpMethod.PATCH, own(), body);
        assertThat(answer.getStatus()).isEqualTo(200);
        assertThat(JsonMapper.shared()
                        .readTree(answer.getContentAsString())
                        .get("active")
                        .booleanValue())
                .isFalse();
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "userName",
                "userName eq",
                "userName eq x",
                "userName co \"x\"",
                "emails eq \"x\"",
                "userName eq \"x\" and active eq true",
                "userName eq \"x",
                "password eq \"x\"",
                "' or 1=1 --"
            })
    void aFilterThatIsNotOfferedIsRefused(String filter) throws Exception {
        refused(
                mockMvc.perform(get("/scim/v2/Users")
                                .param("filter", filter)
                                .header("Authorization", "Bearer " + token))
                        .andReturn()
                        .getResponse(),
                400,
                "invalidFilter");
    }

    @Test
    void aFilterMadeToTakeLongEndsSoon() throws Exception {
        String filter = "userName eq \"" + "\\\\".repeat(20_000);
        refused(
                mockMvc.perform(get("/scim/v2/Users")
                                .param("filter", filter)
                                .header("Authorization", "Bearer " + token))
                        .andReturn()
                        .getResponse(),
                400,
                "invalidFilter");
    }

    @Test
    void numbersOfAPageAreTakenWithinTheirBounds() throws Exception {
        for (String page :
                List.of("startIndex=0", "startIndex=-5", "count=-1", "count=100000", "startIndex=2147483647")) {
            assertThat(send(HttpMethod.GET, "/Users?" + page, null).getStatus()).isEqualTo(200);
        }
        refused(send(HttpMethod.GET, "/Users?count=many", null), 400, "invalidValue");
    }

    @Test
    void whatIsNotThereIsUnknown() throws Exception {
        for (String id : List.of(UUID.randomUUID().toString(), "7", "x".repeat(300))) {
            refused(send(HttpMethod.GET, "/Users/" + id, null), 404, null);
            refused(send(HttpMethod.DELETE, "/Users/" + id, null), 404, null);
        }
        refused(send(HttpMethod.GET, "/ResourceTypes/Group", null), 404, null);
    }

    @Test
    void charactersThatAreNoTextAreRefused() throws Exception {
        refused(
                send(
                        HttpMethod.PATCH,
                        own(),
                        "{\"Operations\":[{\"op\":\"add\",\"path\":\"externalId\",\"value\":\"a\\u0000b\"}]}"),
                400,
                "invalidSyntax");
        refused(
                send(HttpMethod.POST, "/Users", "{\"userName\":\"maren.t\",\"displayName\":\"a\\ud800b\"}"),
                400,
                "invalidSyntax");
        refused(
                send(HttpMethod.POST, "/Users", "{\"userName\":\"maren.t\",\"displayName\":\"a\\u0007b\"}"),
                400,
                "invalidValue");
    }

    @Test
    void withoutAGoodTokenNothingAnswersWhoeverIsLoggedIn() throws Exception {
        SignedIn administrator = organisation.join("Ilse Brandt", Role.ADMINISTRATOR);
        for (String header :
                List.of("", "Bearer", "Bearer ", "Bearer wrong", "Basic " + token, "Bearer " + "x".repeat(5_000))) {
            MockHttpServletResponse answer = mockMvc.perform(get("/scim/v2/Users")
                            .header("Authorization", header)
                            .with(LogIn.as(administrator)))
                    .andReturn()
                    .getResponse();
            refused(answer, 401, null);
            assertThat(answer.getHeader("WWW-Authenticate")).isEqualTo("Bearer");
            assertThat(answer.getCookies()).isEmpty();
        }
    }

    @Test
    void theTableHoldsNoToken() {
        assertThat(jdbc.sql("select t::text from provision_token t where tenant_id = :tenant")
                        .param("tenant", organisation.tenant())
                        .query(String.class)
                        .single())
                .doesNotContain(token, token.replace("-", ""));
    }
}
