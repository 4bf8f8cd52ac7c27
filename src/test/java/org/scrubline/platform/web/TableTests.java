package org.scrubline.platform.web;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.get;

import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.scrubline.platform.NotFound;
import org.scrubline.platform.Role;
import org.scrubline.platform.SignedIn;
import org.scrubline.support.LogIn;
import org.scrubline.support.ScrublineTest;
import org.scrubline.support.TestOrganisations;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.mock.web.MockHttpServletResponse;
import org.springframework.test.web.servlet.MockMvc;
import org.springframework.web.servlet.resource.ResourceUrlProvider;

/** The page a device keeps, what keeps it current, and how it is withdrawn. */
@ScrublineTest
class TableTests {

    @Autowired
    MockMvc mockMvc;

    @Autowired
    TestOrganisations organisations;

    @Autowired
    ScriptFolder scripts;

    @Autowired
    ResourceUrlProvider urls;

    @Test
    void thePageADeviceKeepsHoldsNoNameAndNoTokenWhoeverAsks() throws Exception {
        SignedIn who = organisations.open().join("Ansel Verrin", Role.SUPERVISOR);
        MockHttpServletResponse response = mockMvc.perform(get("/at-the-table").with(LogIn.as(who)))
                .andReturn()
                .getResponse();
        assertThat(response.getHeader("X-Scrubline-Shell")).isEqualTo("1");
        assertThat(response.getContentAsString())
                .contains("/js/" + scripts.version() + "/offline/table.js")
                .doesNotContain("Verrin", "csrf", "_csrf");
    }

    @Test
    void theSessionIsToldToItsOwnerAndIsEmptyForNobody() throws Exception {
        assertThat(text("/at-the-table/session")).contains("\"person\":null", "\"token\":null", "\"off\":false");
        SignedIn who = organisations.open().join("Ansel Verrin", Role.SUPERVISOR);
        assertThat(mockMvc.perform(get("/at-the-table/session").with(LogIn.as(who)))
                        .andReturn()
                        .getResponse()
                        .getContentAsString())
                .contains(who.personId().toString(), "X-CSRF-TOKEN")
                .doesNotContain("Verrin");
    }

    @Test
    void theWorkerKeepsOnlyFilesThatNeverChangeUnderTheirName() throws Exception {
        String worker = text("/service-worker.js");
        Matcher files = Pattern.compile("\"files\":\\[([^]]*)]").matcher(worker);
        assertThat(files.find()).isTrue();
        for (String file : files.group(1).replace("\"", "").split(",")) {
            assertThat(file).matches("/mark\\.svg|/css/[a-z]+-[0-9a-f]+\\.css|/js/[0-9a-f]{12}/.+\\.js");
            assertThat(mockMvc.perform(get(file)).andReturn().getResponse().getStatus())
                    .as(file)
                    .isEqualTo(200);
        }
    }

    @Test
    void modulesOfAnotherVersionAreNotServedUnderItsName() throws Exception {
        assertThat(mockMvc.perform(get("/js/0123456789ab/offline/table.js"))
                        .andReturn()
                        .getResponse()
                        .getStatus())
                .isEqualTo(404);
    }

    @Test
    void theManifestNamesThePageToStartWith() throws Exception {
        assertThat(text("/manifest.webmanifest")).contains("\"start_url\": \"/at-the-table\"");
    }

    @Test
    void withdrawnTheWorkerTakesItselfAwayAndLeavesTheDatabase() {
        TableController off = new TableController(new TableSettings(false, 1), scripts, urls);
        assertThat(off.worker().getBody())
                .contains("unregister", "caches.delete")
                .doesNotContain("indexedDB", "fetch");
        assertThatThrownBy(() -> off.page(new MockHttpServletResponse())).isInstanceOf(NotFound.class);
    }

    private String text(String path) throws Exception {
        MockHttpServletResponse response =
                mockMvc.perform(get(path)).andReturn().getResponse();
        assertThat(response.getStatus()).isEqualTo(200);
        return response.getContentAsString();
    }
}
