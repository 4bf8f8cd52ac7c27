package org.scrubline.platform.web;

import static org.assertj.core.api.Assertions.assertThat;
import static org.springframework.security.test.web.servlet.request.SecurityMockMvcRequestPostProcessors.csrf;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.get;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.post;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.redirectedUrl;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.status;

import jakarta.servlet.http.Cookie;
import java.time.Duration;
import java.util.List;
import java.util.regex.Pattern;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.scrubline.platform.Role;
import org.scrubline.platform.ScrublineClock;
import org.scrubline.platform.SignedIn;
import org.scrubline.support.ScrublineTest;
import org.scrubline.support.TestOrganisations;
import org.scrubline.support.TestOrganisations.TestOrganisation;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.test.web.servlet.MockMvc;
import org.springframework.test.web.servlet.ResultActions;
import org.springframework.test.web.servlet.request.MockHttpServletRequestBuilder;
import org.springframework.transaction.support.TransactionTemplate;

@ScrublineTest
class SessionsPagesTests {

    private static final String PAGE = "/account/sessions";
    private static final String WARD = "Mozilla/5.0 (Windows NT 10.0) Gecko/20100101 Firefox/140.0";
    private static final String PHONE = "Mozilla/5.0 (iPhone; CPU iPhone OS 18 like Mac OS X) Version/18 Safari/604";
    private static final Pattern END = Pattern.compile("action=\"(/account/sessions/[0-9a-f]{64}/end)\"");
    private static final String TOLD = "from a kind of device it had not been used on";

    @Autowired
    MockMvc mockMvc;

    @Autowired
    TestOrganisations organisations;

    @Autowired
    JdbcClient jdbc;

    @Autowired
    TransactionTemplate transaction;

    @Autowired
    ScrublineClock clock;

    TestOrganisation organisation;
    SignedIn supervisor;

    @BeforeEach
    void join() {
        organisation = organisations.open();
        supervisor = organisation.join("Ansel Verrin", Role.SUPERVISOR);
    }

    /** One browser: its session and what it says of itself. */
    private final class Browser {

        private final String agent;
        private Cookie session = new Cookie("SCRUBLINE", "none");

        Browser(String agent) throws Exception {
            this.agent = agent;
            logIn(TestOrganisations.PASSWORD);
        }

        ResultActions logIn(String password) throws Exception {
            return send(post("/login").param("username", supervisor.username()).param("password", password));
        }

        ResultActions send(MockHttpServletRequestBuilder request) throws Exception {
            ResultActions answer = mockMvc.perform(request.cookie(session)
                    .header("User-Agent", agent)
                    .with(csrf())
                    .with(sent -> {
                        sent.setRemoteAddr("198.51.100.32");
                        return sent;
                    }));
            for (Cookie cookie : answer.andReturn().getResponse().getCookies()) {
                session = cookie;
            }
            return answer;
        }

        String page(String path) throws Exception {
            return send(get(path)).andReturn().getResponse().getContentAsString();
        }

        boolean isIn() throws Exception {
            return page("/account/keys").contains("Ansel Verrin");
        }
    }

    @Test
    void eachSessionIsListedWithItsDeviceAndNoneWithItsId() throws Exception {
        Browser ward = new Browser(WARD);
        Browser phone = new Browser(PHONE);
        String page = ward.page(PAGE);
        assertThat(page).contains("Firefox on Windows", "Safari on an iPhone or iPad", "198.51.100.32", "this one");
        List<String> ids = jdbc.sql("select session_id from spring_session where principal_name = :name")
                .param("name", supervisor.username())
                .query(String.class)
                .list();
        assertThat(ids).hasSize(2);
        assertThat(ids).allSatisfy(id -> assertThat(page).doesNotContain(id.strip()));
        assertThat(phone.page(PAGE)).contains("Firefox on Windows");
    }

    @Test
    void aSessionThatIsEndedIsOverAtItsNextRequest() throws Exception {
        Browser ward = new Browser(WARD);
        Browser phone = new Browser(PHONE);
        String end = END.matcher(ward.page(PAGE))
                .results()
                .map(one -> one.group(1))
                .findFirst()
                .orElseThrow();
        ward.send(post(end)).andExpect(redirectedUrl(PAGE));
        assertThat(phone.isIn()).isFalse();
        assertThat(ward.isIn()).isTrue();
        ward.send(post(end)).andExpect(status().isNotFound());
    }

    @Test
    void loggingOutEmptiesTheBrowsersCacheAndLeavesItsStorageAlone() throws Exception {
        Browser ward = new Browser(WARD);
        assertThat(ward.send(post("/logout"))
                        .andExpect(redirectedUrl("/login?left"))
                        .andReturn()
                        .getResponse()
                        .getHeader("Clear-Site-Data"))
                .isEqualTo("\"cache\"");
        assertThat(ward.isIn()).isFalse();
    }

    @Test
    void withoutAMailServerThePageOfWhoCannotGetInSaysWhomToAsk() throws Exception {
        String page =
                mockMvc.perform(get("/login/help")).andReturn().getResponse().getContentAsString();
        assertThat(page).contains("sends no mail", "Ask your administrator").doesNotContain("Send me a code");
        mockMvc.perform(post("/login/help").param("name", supervisor.username()).with(csrf()))
                .andExpect(redirectedUrl("/login/help"));
    }

    @Test
    void allOthersEndTogether() throws Exception {
        Browser ward = new Browser(WARD);
        Browser phone = new Browser(PHONE);
        Browser tablet = new Browser(PHONE);
        ward.send(post(PAGE + "/others/end")).andExpect(redirectedUrl(PAGE));
        assertThat(List.of(ward.isIn(), phone.isIn(), tablet.isIn())).containsExactly(true, false, false);
        assertThat(ward.page(PAGE)).doesNotContain("End all other sessions");
    }

    @Test
    void nobodyEndsSomebodyElsesSession() throws Exception {
        Browser ward = new Browser(WARD);
        new Browser(PHONE);
        String end = END.matcher(ward.page(PAGE))
                .results()
                .map(one -> one.group(1))
                .findFirst()
                .orElseThrow();
        supervisor = organisation.join("Ottilie Brannock", Role.ADMINISTRATOR);
        Browser other = new Browser(WARD);
        other.send(post(end)).andExpect(status().isNotFound());
        assertThat(other.page(PAGE)).doesNotContain(end);
    }

    @Test
    void aNewKindOfDeviceIsToldOnTheOthersUntilTheOwnerSaysWhoItWas() throws Exception {
        Browser ward = new Browser(WARD);
        assertThat(ward.page("/to-score")).as("the first one surprises nobody").doesNotContain(TOLD);
        new Browser(WARD);
        assertThat(ward.page("/to-score")).as("the same kind").doesNotContain(TOLD);

        Browser phone = new Browser(PHONE);
        assertThat(ward.page("/to-score")).contains(TOLD);
        assertThat(phone.page("/to-score")).as("not on the new one").doesNotContain(TOLD);
        assertThat(phone.page(PAGE)).doesNotContain("Was this you?");
        assertThat(written("new-device")).isEqualTo(1);
        phone.send(post(PAGE + "/mine"));
        assertThat(ward.page(PAGE)).as("nor answered there").contains("Was this you?");

        ward.send(post(PAGE + "/mine")).andExpect(redirectedUrl(PAGE));
        assertThat(ward.page("/to-score")).doesNotContain(TOLD);
        new Browser(PHONE);
        assertThat(ward.page("/to-score")).doesNotContain(TOLD);
    }

    @Test
    void whoSaysNoEndsTheOthersIsLedToThePasswordAndIsToldAgain() throws Exception {
        Browser ward = new Browser(WARD);
        Browser phone = new Browser(PHONE);
        ward.send(post(PAGE + "/not-mine")).andExpect(redirectedUrl("/account/password"));
        assertThat(phone.isIn()).isFalse();
        assertThat(ward.page("/to-score")).doesNotContain(TOLD);
        new Browser(PHONE);
        assertThat(ward.page("/to-score")).contains(TOLD);
    }

    @Test
    void aNewPasswordEndsTheOtherSessionsAndMakesEveryDeviceElsewhereNew() throws Exception {
        Browser ward = new Browser(WARD);
        Browser phone = new Browser(PHONE);
        ward.send(post(PAGE + "/mine"));
        ward.send(post("/account/password")
                        .param("current", TestOrganisations.PASSWORD)
                        .param("password", "another quiet sentence"))
                .andExpect(redirectedUrl(PAGE));
        assertThat(phone.isIn()).isFalse();
        assertThat(ward.isIn()).isTrue();
        phone.logIn(TestOrganisations.PASSWORD).andExpect(redirectedUrl("/login?error"));
        phone.logIn("another quiet sentence");
        assertThat(phone.isIn()).isTrue();
        assertThat(ward.page("/to-score")).contains(TOLD);
        assertThat(written("password-changed")).isEqualTo(1);
    }

    @ParameterizedTest
    @CsvSource({
        "not the password,another quiet sentence,That is not your password",
        "a quiet test sentence,short,A password has 12 to 200 characters"
    })
    void aPasswordIsNotChangedWithoutTheCurrentOneOrToAShortOne(String current, String fresh, String why)
            throws Exception {
        Browser ward = new Browser(WARD);
        String page = ward.send(
                        post("/account/password").param("current", current).param("password", fresh))
                .andExpect(status().isUnprocessableContent())
                .andReturn()
                .getResponse()
                .getContentAsString();
        assertThat(page).contains(why).doesNotContain("value=\"" + fresh);
        assertThat(new Browser(WARD).isIn()).isTrue();
    }

    @Test
    void aSessionIsOverTwelveHoursAfterItsLogInHoweverMuchItIsUsed() throws Exception {
        Browser ward = new Browser(WARD);
        assertThat(after(Duration.ofHours(12).minusMinutes(1), ward)).isTrue();
        assertThat(after(Duration.ofHours(12).plusMinutes(1), ward)).isFalse();
    }

    private boolean after(Duration time, Browser browser) {
        return clock.at(clock.instant().plus(time), () -> {
            try {
                return browser.isIn();
            } catch (Exception e) {
                throw new IllegalStateException(e);
            }
        });
    }

    private int written(String action) {
        return organisation.in(
                () -> transaction.execute(status -> jdbc.sql("select count(*) from audit_entry where action = :action")
                        .param("action", action)
                        .query(Integer.class)
                        .single()));
    }
}
