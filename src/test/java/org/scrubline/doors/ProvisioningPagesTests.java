package org.scrubline.doors;

import static org.assertj.core.api.Assertions.assertThat;
import static org.hamcrest.Matchers.containsString;
import static org.springframework.security.test.web.servlet.request.SecurityMockMvcRequestPostProcessors.csrf;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.get;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.post;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.content;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.flash;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.redirectedUrl;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.status;

import java.time.Duration;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.scrubline.people.People;
import org.scrubline.platform.Role;
import org.scrubline.platform.ScrublineClock;
import org.scrubline.platform.SignedIn;
import org.scrubline.provision.ProvisionTokens;
import org.scrubline.provision.ProvisionedUser;
import org.scrubline.provision.Provisioning;
import org.scrubline.provision.Wanted;
import org.scrubline.support.LogIn;
import org.scrubline.support.ScrublineTest;
import org.scrubline.support.TestOrganisations;
import org.scrubline.support.TestOrganisations.TestOrganisation;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.test.web.servlet.MockMvc;
import org.springframework.test.web.servlet.ResultActions;
import org.springframework.test.web.servlet.request.MockHttpServletRequestBuilder;

@ScrublineTest
class ProvisioningPagesTests {

    private static final String PAGE = "/people/provisioning";
    private static final Pattern TOKEN = Pattern.compile("[A-Z2-9]{5}(?:-[A-Z2-9]{5}){5}-[A-Z2-9]{2}");

    @Autowired
    MockMvc mockMvc;

    @Autowired
    TestOrganisations organisations;

    @Autowired
    ProvisionTokens tokens;

    @Autowired
    Provisioning provisioning;

    @Autowired
    People people;

    @Autowired
    ScrublineClock clock;

    TestOrganisation organisation;
    SignedIn administrator;

    @BeforeEach
    void open() {
        organisation = organisations.open();
        administrator = organisation.join("Ilse Brandt", Role.ADMINISTRATOR);
    }

    private ResultActions send(MockHttpServletRequestBuilder request) throws Exception {
        return mockMvc.perform(request.with(LogIn.as(administrator)).with(csrf()));
    }

    private ProvisionedUser brought() {
        return organisation.in(() -> provisioning
                .create(new Wanted(
                        Optional.of("b" + UUID.randomUUID().toString().substring(0, 12)),
                        Optional.of("Maren Tolvik"),
                        Optional.empty(),
                        Optional.empty()))
                .orThrow());
    }

    @Test
    void aTokenIsShownOnceAndIsGoodUntilItIsEnded() throws Exception {
        send(get(PAGE)).andExpect(content().string(containsString("Without a token no directory")));
        String page = send(post(PAGE + "/tokens").param("label", "hospital directory"))
                .andExpect(status().isOk())
                .andReturn()
                .getResponse()
                .getContentAsString();
        Matcher shown = TOKEN.matcher(page);
        assertThat(shown.find()).isTrue();
        assertThat(tokens.organisation(shown.group())).contains(organisation.tenant());
        assertThat(send(get(PAGE)).andReturn().getResponse().getContentAsString())
                .contains("hospital directory", organisation.tenant().toString())
                .doesNotContain(shown.group());

        UUID id = organisation.in(() -> tokens.open().get(0).id());
        send(post(PAGE + "/tokens/" + id + "/revoke")).andExpect(redirectedUrl(PAGE));
        assertThat(tokens.organisation(shown.group())).isEmpty();
        send(post(PAGE + "/tokens/" + id + "/revoke")).andExpect(status().isNotFound());
    }

    @Test
    void aTokenNeedsANameAndAFreshLogIn() throws Exception {
        for (String label : List.of("", "  ", "x".repeat(61))) {
            send(post(PAGE + "/tokens").param("label", label)).andExpect(status().isUnprocessableContent());
        }
        clock.at(clock.instant().plus(Duration.ofMinutes(6)), () -> {
            try {
                return send(post(PAGE + "/tokens").param("label", "late")).andExpect(status().isForbidden());
            } catch (Exception e) {
                throw new IllegalStateException(e);
            }
        });
        assertThat(organisation.in(tokens::open)).isEmpty();
    }

    @Test
    void anotherOrganisationsTokenIsNotEnded() throws Exception {
        TestOrganisation other = organisations.open();
        String token = other.in(() -> tokens.make("theirs").orThrow());
        UUID id = other.in(() -> tokens.open().get(0).id());
        send(post(PAGE + "/tokens/" + id + "/revoke")).andExpect(status().isNotFound());
        assertThat(tokens.organisation(token)).contains(other.tenant());
    }

    @Test
    void whomTheDirectoryBroughtGetsARoleHereAndAnInvitation() throws Exception {
        ProvisionedUser user = brought();
        send(get(PAGE)).andExpect(content().string(containsString("Maren Tolvik")));
        send(post(PAGE + "/persons/" + user.id() + "/role").param("role", "WIZARD"))
                .andExpect(status().isUnprocessableContent());
        send(post(PAGE + "/persons/" + user.id() + "/role").param("role", "TRAINEE"))
                .andExpect(redirectedUrl(PAGE))
                .andExpect(flash().attributeExists("code"))
                .andExpect(flash().attribute("invited", user.username()));
        assertThat(organisation.in(() -> people.holding(organisation.programme().id(), Role.TRAINEE)))
                .extracting(one -> one.id())
                .containsExactly(user.id());
        send(post(PAGE + "/persons/" + user.id() + "/role").param("role", "DIRECTOR"))
                .andExpect(status().isNotFound());
    }
}
