// SPDX-License-Identifier: Apache-2.0
package kerfglow.desktop.desk;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import kerfglow.job.FindingFilter;
import kerfglow.job.FindingItem;
import kerfglow.job.FindingList;
import kerfglow.job.FindingOrder;
import kerfglow.job.ReviewedResult;
import kerfglow.job.Station;

/** The findings by station as they are listed; made once for a result, a filter and an order, since every pane asks for it again and again. */
final class Listing {
    private final Optional<FindingList> list;
    private final List<Station.Outlook> outlooks;
    private final Map<Station, List<FindingItem>> byStation = new LinkedHashMap<>();
    private final List<FindingItem> all = new ArrayList<>();

    Listing(Optional<ReviewedResult> reviewed, FindingFilter filter, FindingOrder order) {
        list = reviewed.map(each -> FindingList.of(each, filter, order));
        outlooks = reviewed.map(Station::outlooks).orElse(List.of());
        for (Station.Outlook outlook : outlooks) {
            Set<Integer> own = outlook.items().stream().map(FindingItem::number).collect(Collectors.toCollection(HashSet::new));
            List<FindingItem> listed = list.stream().flatMap(each -> each.items().stream()).filter(item -> own.contains(item.number())).toList();
            byStation.put(outlook.station(), listed);
            all.addAll(listed);
        }
    }

    List<Station.Outlook> outlooks() {
        return outlooks;
    }

    List<FindingItem> of(Station.Outlook outlook) {
        return byStation.getOrDefault(outlook.station(), List.of());
    }

    List<FindingItem> all() {
        return List.copyOf(all);
    }

    int hidden() {
        return list.map(FindingList::hidden).orElse(0);
    }

    Optional<FindingItem> item(String id) {
        return list.flatMap(each -> each.item(id));
    }
}
