package org.scrubline.platform;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** User agents as browsers write them (from memory, shortened; browsers publish no common list). */
class DeviceTests {

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "Mozilla/5.0 (Windows NT 10.0; Win64; x64; rv:140.0) Gecko/20100101 Firefox/140.0|FIREFOX/WINDOWS",
                "Mozilla/5.0 (Windows NT 10.0) AppleWebKit/537.36 Chrome/140.0 Safari/537.36 Edg/140.0|EDGE/WINDOWS",
                "Mozilla/5.0 (X11; Linux x86_64) AppleWebKit/537.36 Chrome/140.0 Safari/537.36|CHROME/LINUX",
                "Mozilla/5.0 (X11; CrOS x86_64) AppleWebKit/537.36 Chrome/140.0 Safari/537.36|CHROME/CHROME_OS",
                "Mozilla/5.0 (Macintosh; Intel Mac OS X 14) AppleWebKit/605 Version/18 Safari/605|SAFARI/MAC",
                "Mozilla/5.0 (iPhone; CPU iPhone OS 18 like Mac OS X) Version/18 Safari/604|SAFARI/PHONE_OR_TABLET_IOS",
                "Mozilla/5.0 (Linux; Android 16) Chrome/140.0 Mobile Safari/537.36|CHROME/PHONE_OR_TABLET_ANDROID",
                "curl/8.1|OTHER/OTHER",
                "''|OTHER/OTHER"
            })
    void aBrowserIsRecognisedByWhatItSaysOfItself(String agent, String device) {
        assertThat(Device.of(agent).text()).isEqualTo(device);
        assertThat(Device.parse(device)).contains(Device.of(agent));
    }

    @Test
    void nothingSentIsRecognisedAsNothing() {
        assertThat(Device.of(null).text()).isEqualTo("OTHER/OTHER");
        assertThat(Device.parse("FIREFOX")).isEmpty();
    }
}
