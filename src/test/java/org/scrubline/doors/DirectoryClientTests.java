package org.scrubline.doors;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowableOfType;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.redirectedUrl;

import com.unboundid.scim2.client.ScimService;
import com.unboundid.scim2.common.exceptions.ScimException;
import com.unboundid.scim2.common.messages.ListResponse;
import com.unboundid.scim2.common.types.Email;
import com.unboundid.scim2.common.types.ServiceProviderConfigResource;
import com.unboundid.scim2.common.types.UserResource;
import jakarta.ws.rs.client.Client;
import jakarta.ws.rs.client.ClientBuilder;
import jakarta.ws.rs.client.ClientRequestFilter;
import java.net.URI;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.UUID;
import org.assertj.core.api.ThrowableAssert.ThrowingCallable;
import org.glassfish.jersey.apache5.connector.Apache5ConnectorProvider;
import org.glassfish.jersey.client.ClientConfig;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.scrubline.people.People;
import org.scrubline.platform.Role;
import org.scrubline.platform.SignedIn;
import org.scrubline.provision.ProvisionTokens;
import org.scrubline.support.TestOrganisations;
import org.scrubline.support.TestOrganisations.TestOrganisation;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.boot.test.web.server.LocalServerPort;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.test.web.servlet.MockMvc;
import org.springframework.transaction.support.TransactionTemplate;

/** The life of an account as a directory leads it, by the client of com.unboundid.product.scim2, written by others. */
@DoorsTest
class DirectoryClientTests {

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

    @Autowired
    TransactionTemplate transaction;

    @LocalServerPort
    int port;

    TestOrganisation organisation;
    ScimService directory;
    String username;

    @BeforeEach
    void open() {
        organisation = organisations.open();
        directory = directory(
                organisation.in(() -> tokens.make("hospital directory").orThrow()));
        username = "d" + UUID.randomUUID().toString().substring(0, 12);
    }

    private ScimService directory(String token) {
        Client client = ClientBuilder.newClient(new ClientConfig().connectorProvider(new Apache5ConnectorProvider()));
        return new ScimService(client.target("http://localhost:" + port + "/scim/v2")
                .register((ClientRequestFilter)
                        request -> request.getHeaders().putSingle("Authorization", "Bearer " + token)));
    }

    private UserResource wanted(String name) {
        UserResource user = new UserResource()
                .setUserName(name)
                .setDisplayName("Maren Tolvik")
                .setActive(true);
        user.setExternalId("staff-" + name);
        return user;
    }

    private UserResource created() throws ScimException {
        return directory.create("Users", wanted(username));
    }

    /** By its id, since the server names its public address, which is no port of a test. */
    private UserResource replace(UserResource user) throws ScimException {
        return directory
                .replaceRequest(URI.create("Users/" + user.getId()), user)
                .invoke();
    }

    private static ScimException refused(ThrowingCallable call) {
        return catchThrowableOfType(ScimException.class, call);
    }

    private List<String> written() {
        return organisation.in(() -> transaction.execute(
                status -> jdbc.sql("select action from audit_entry where action like 'person-%' order by sequence")
                        .query(String.class)
                        .list()));
    }

    @Test
    void whoIsCreatedIsReadAndFoundAgain() throws ScimException {
        UserResource made = created();
        assertThat(made.getMeta().getLocation().toString()).endsWith("/scim/v2/Users/" + made.getId());
        for (UserResource read : List.of(
                directory.retrieve("Users", made.getId(), UserResource.class),
                directory
                        .search(
                                "Users",
                                "userName eq \"" + username.toUpperCase(Locale.ROOT) + "\"",
                                UserResource.class)
                        .getResources()
                        .get(0),
                directory
                        .search("Users", "externalId eq \"staff-" + username + "\"", UserResource.class)
                        .getResources()
                        .get(0))) {
            assertThat(read.getId()).isEqualTo(made.getId());
            assertThat(read.getUserName()).isEqualTo(username);
            assertThat(read.getExternalId()).isEqualTo("staff-" + username);
            assertThat(read.getDisplayName()).isEqualTo("Maren Tolvik");
            assertThat(read.getActive()).isTrue();
        }
        assertThat(directory
                        .search("Users", "userName eq \"nobody-here\"", UserResource.class)
                        .getTotalResults())
                .isZero();
        assertThat(written()).containsExactly("person-provisioned");
    }

    @Test
    void whoIsCreatedHasNoRoleAndNoPasswordAndWhatIsNotKeptIsDropped() throws ScimException {
        UserResource made = directory.create(
                "Users",
                wanted(username)
                        .setPassword("chosen by the directory")
                        .setEmails(new Email().setValue("maren@orlin.example")));
        assertThat(made.getEmails()).isNullOrEmpty();
        Boolean bare = organisation.in(() -> transaction.execute(
                status -> jdbc.sql("select a.password_hash is null and not exists (select 1 from programme_role r"
                                + " where r.person_id = p.id) from person p join login_account a on"
                                + " a.id = p.account_id where p.id = :id")
                        .param("id", UUID.fromString(made.getId()))
                        .query(Boolean.class)
                        .single()));
        assertThat(bare).isTrue();
    }

    @Test
    void aNameThatIsTakenIsAConflict() throws ScimException {
        created();
        ScimException sameName = refused(() -> directory.create(
                "Users",
                new UserResource()
                        .setUserName(username.toUpperCase(Locale.ROOT))
                        .setDisplayName("Somebody Else")));
        assertThat(sameName.getScimError().getStatus()).isEqualTo(409);
        assertThat(sameName.getScimError().getScimType()).isEqualTo("uniqueness");
        UserResource sameId = wanted(username + "b");
        sameId.setExternalId("staff-" + username);
        assertThat(refused(() -> directory.create("Users", sameId))
                        .getScimError()
                        .getStatus())
                .isEqualTo(409);
    }

    @Test
    void whatCannotBeIsRefusedWithTheReason() {
        for (UserResource unfit : List.of(
                new UserResource().setUserName("a b").setDisplayName("Maren Tolvik"),
                new UserResource().setDisplayName("Maren Tolvik"),
                new UserResource().setUserName(username),
                wanted(username).setDisplayName("x".repeat(121)))) {
            ScimException refused = refused(() -> directory.create("Users", unfit));
            assertThat(refused.getScimError().getStatus()).isEqualTo(400);
            assertThat(refused.getScimError().getScimType()).isEqualTo("invalidValue");
            assertThat(refused.getScimError().getDetail()).isNotBlank();
        }
        assertThat(written()).isEmpty();
    }

    @Test
    void replacingWithTheSameNamesChangesTheRestAndOtherNamesAreRefused() throws ScimException {
        UserResource made = created();
        made.setExternalId("staff-new");
        made.setActive(false);
        UserResource replaced = replace(made);
        assertThat(replaced.getExternalId()).isEqualTo("staff-new");
        assertThat(replaced.getActive()).isFalse();

        made.setExternalId(null);
        made.setActive(true);
        replaced = replace(made);
        assertThat(replaced.getExternalId()).isNull();
        assertThat(replaced.getActive()).isTrue();

        ScimException refused = refused(() -> replace(made.setUserName(username + "x")));
        assertThat(refused.getScimError().getScimType()).isEqualTo("mutability");
    }

    @Test
    void closingEndsEverySessionAtOnceAndOpeningLetsInAgain() throws Exception {
        SignedIn somebody = organisation.join("Ansel Verrin", Role.SUPERVISOR);
        ProviderBrowser ward = new ProviderBrowser(mockMvc);
        ward.password(somebody);
        assertThat(ward.isIn(somebody)).isTrue();

        directory
                .modifyRequest("Users", somebody.personId().toString())
                .replaceValue("active", false)
                .invoke(UserResource.class);
        assertThat(ward.isIn(somebody)).isFalse();
        assertThat(jdbc.sql("select count(*) from spring_session where principal_name = :name")
                        .param("name", somebody.username())
                        .query(Integer.class)
                        .single())
                .isZero();
        ward.password(somebody);
        assertThat(ward.isIn(somebody)).isFalse();

        directory
                .modifyRequest("Users", somebody.personId().toString())
                .replaceValue("active", true)
                .invoke(UserResource.class);
        ward.password(somebody);
        assertThat(ward.isIn(somebody)).isTrue();
        assertThat(written()).containsSubsequence("person-closed", "person-reopened");
    }

    @Test
    void removingClosesAndHidesFromTheDirectoryAndDeletesNothing() throws ScimException {
        UserResource made = created();
        directory.delete("Users", made.getId());
        assertThat(refused(() -> directory.retrieve("Users", made.getId(), UserResource.class))
                        .getScimError()
                        .getStatus())
                .isEqualTo(404);
        assertThat(refused(() -> directory.delete("Users", made.getId()))
                        .getScimError()
                        .getStatus())
                .isEqualTo(404);
        assertThat(organisation
                        .in(() -> people.person(UUID.fromString(made.getId())))
                        .orElseThrow()
                        .active())
                .isFalse();
        assertThat(refused(this::created).getScimError().getStatus())
                .as("a log-in name is never given twice")
                .isEqualTo(409);
    }

    @Test
    void pagesShowEverybodyOnce() throws ScimException {
        for (int i = 0; i < 5; i++) {
            directory.create("Users", wanted(username + i));
        }
        List<String> seen = new ArrayList<>();
        for (int start = 1; start <= 5; start += 2) {
            ListResponse<UserResource> page =
                    directory.searchRequest("Users").page(start, 2).invoke(UserResource.class);
            assertThat(page.getTotalResults()).isEqualTo(5);
            page.getResources().forEach(user -> seen.add(user.getUserName()));
        }
        assertThat(seen).containsExactly(username + 0, username + 1, username + 2, username + 3, username + 4);
        assertThat(directory
                        .searchRequest("Users")
                        .page(1, 0)
                        .invoke(UserResource.class)
                        .getTotalResults())
                .isEqualTo(5);
    }

    @Test
    void theServerSaysWhatItCanDo() throws ScimException {
        ServiceProviderConfigResource can = directory.getServiceProviderConfig();
        assertThat(can.getPatch().isSupported()).isTrue();
        assertThat(can.getFilter().isSupported()).isTrue();
        assertThat(can.getBulk().isSupported()).isFalse();
        assertThat(directory.getResourceTypes().getResources())
                .singleElement()
                .satisfies(type -> assertThat(type.getEndpoint().toString()).isEqualTo("/Users"));
        assertThat(directory.getResourceType("User").getName()).isEqualTo("User");
        String schema = "urn:ietf:params:scim:schemas:core:2.0:User";
        assertThat(directory.getSchemas().getResources()).hasSize(1);
        assertThat(directory.getSchema(schema).getAttributes())
                .extracting(attribute -> attribute.getName())
                .containsExactlyInAnyOrder("userName", "displayName", "name", "active");
        assertThat(refused(() -> directory.getSchema(schema + "x"))
                        .getScimError()
                        .getStatus())
                .isEqualTo(404);
    }

    @Test
    void anotherOrganisationsPeopleAreUnknown() throws ScimException {
        UserResource made = created();
        TestOrganisation other = organisations.open();
        ScimService foreign = directory(other.in(() -> tokens.make("another").orThrow()));
        assertThat(refused(() -> foreign.retrieve("Users", made.getId(), UserResource.class))
                        .getScimError()
                        .getStatus())
                .isEqualTo(404);
        assertThat(refused(() -> foreign.delete("Users", made.getId()))
                        .getScimError()
                        .getStatus())
                .isEqualTo(404);
        assertThat(foreign.search("Users", "userName eq \"" + username + "\"", UserResource.class)
                        .getTotalResults())
                .isZero();
        assertThat(directory.retrieve("Users", made.getId(), UserResource.class).getActive())
                .isTrue();
    }

    @Test
    void aTokenThatIsEndedOpensNothing() throws ScimException {
        created();
        organisation.in(() -> tokens.revoke(tokens.open().get(0).id()));
        ScimException refused = refused(() -> directory.search("Users", null, UserResource.class));
        assertThat(refused.getScimError().getStatus()).isEqualTo(401);
    }

    @Test
    void aLogInManyPeopleShareIsNoneOfTheDirectorysPeople() throws ScimException {
        organisation.joinShared("Theatre computer", Role.SUPERVISOR);
        assertThat(directory.search("Users", null, UserResource.class).getTotalResults())
                .isZero();
    }

    @Test
    void whomTheDirectoryBroughtEntersThroughTheProviderAndTheFirstLogInDecidesWhoItIs() throws Exception {
        TestOrganisation orlin = organisations.at(RunningProvider.ORLIN);
        ScimService ofOrlin = directory(orlin.in(() -> tokens.make("Orlin").orThrow()));
        UserResource made = ofOrlin.create("Users", wanted(username));
        new ProviderBrowser(mockMvc)
                .through("orlin", "somebody-" + username, Map.of())
                .andExpect(redirectedUrl("/login?provider=unknown"));
        ProviderBrowser browser = new ProviderBrowser(mockMvc);
        browser.through("orlin", "staff-" + username, Map.of());
        assertThat(browser.page("/account/keys")).contains("Maren Tolvik");

        ofOrlin.modifyRequest("Users", made.getId())
                .replaceValue("externalId", "intruder-" + username)
                .invoke(UserResource.class);
        new ProviderBrowser(mockMvc)
                .through("orlin", "intruder-" + username, Map.of())
                .andExpect(redirectedUrl("/login?provider=unknown"));
        ProviderBrowser again = new ProviderBrowser(mockMvc);
        again.through("orlin", "staff-" + username, Map.of());
        assertThat(again.page("/account/keys")).contains("Maren Tolvik");
    }

    @Test
    void theDirectorysNameForSomebodyItDidNotBringOpensNothing() throws Exception {
        TestOrganisation orlin = organisations.at(RunningProvider.ORLIN);
        SignedIn somebody = orlin.join("Ansel Verrin", Role.SUPERVISOR);
        ScimService ofOrlin = directory(orlin.in(() -> tokens.make("Orlin").orThrow()));
        ofOrlin.modifyRequest("Users", somebody.personId().toString())
                .replaceValue("externalId", "staff-" + username)
                .invoke(UserResource.class);
        new ProviderBrowser(mockMvc)
                .through("orlin", "staff-" + username, Map.of())
                .andExpect(redirectedUrl("/login?provider=unknown"));
    }
}
