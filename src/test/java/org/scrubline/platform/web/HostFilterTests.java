package org.scrubline.platform.web;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.springframework.mock.web.MockFilterChain;
import org.springframework.mock.web.MockHttpServletRequest;
import org.springframework.mock.web.MockHttpServletResponse;

class HostFilterTests {

    @ParameterizedTest
    @CsvSource({
        "scrubline.example,/login,200",
        "SCRUBLINE.example,/login,200",
        "elsewhere.invalid,/login,400",
        "scrubline.example.elsewhere.invalid,/login,400",
        "192.0.2.7,/login,400",
        "192.0.2.7,/actuator/health,200",
        "192.0.2.7,/actuator/health/readiness,200",
        "192.0.2.7,/actuator/healthy,400"
    })
    void onlyTheNamesOfTheSettingsAreAnsweredTo(String host, String path, int status) throws Exception {
        assertThat(asked(List.of("scrubline.example", " other.example"), host, path))
                .isEqualTo(status);
    }

    @ParameterizedTest
    @CsvSource({"elsewhere.invalid,/login,200"})
    void withoutANameInTheSettingsEveryOneIs(String host, String path, int status) throws Exception {
        assertThat(asked(List.of(""), host, path)).isEqualTo(status);
    }

    private static int asked(List<String> hosts, String host, String path) throws Exception {
        MockHttpServletRequest request = new MockHttpServletRequest("GET", path);
        request.setServerName(host);
        MockHttpServletResponse response = new MockHttpServletResponse();
        new HostFilter(new HostSettings(hosts)).doFilter(request, response, new MockFilterChain());
        return response.getStatus();
    }
}
