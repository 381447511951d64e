#include <loopwright/render/column_order.h>

#include <algorithm>
#include <iterator>
#include <set>
#include <utility>

#include <loopwright/render/loop_ranks.h>
#include <loopwright/render/nesting.h>

namespace loopwright {

namespace {

/// What keeps together: a column, or all columns of an assembly.
struct Item {
    Index assembly = none;  // `none`: a column by itself
    std::vector<std::size_t> columns = {};
    Standing standing = {};
};

class ColumnOrder {
  public:
    ColumnOrder(const Sketch& sketch, std::vector<Column>& columns,
                const std::vector<Precedence>& precedences)
        : sketch_(sketch), columns_(columns), precedences_(precedences) {
        for (const Column& column : columns) home_.push_back(assembly_of(sketch, column));
    }

    std::vector<std::size_t> find() {
        std::vector<std::size_t> all(columns_.size());
        for (std::size_t i = 0; i < all.size(); ++i) all[i] = i;
        return sorted(all, none);
    }

  private:
    std::vector<std::size_t> sorted(const std::vector<std::size_t>& columns, Index outer) const {
        std::vector<Item> items = items_of(columns, outer);
        std::stable_sort(items.begin(), items.end(),
                         [](const Item& a, const Item& b) { return a.standing < b.standing; });
        std::vector<std::size_t> out;
        for (const std::size_t i : one_after_another(items)) {
            const Item& item = items[i];
            const std::vector<std::size_t> inner =
                item.assembly == none ? item.columns : sorted(item.columns, item.assembly);
            out.insert(out.end(), inner.begin(), inner.end());
        }
        return out;
    }

    std::vector<Item> items_of(const std::vector<std::size_t>& columns, Index outer) const {
        std::vector<Item> items;
        for (const std::size_t c : columns) {
            const Index assembly = next_inside(sketch_.circuit(), home_[c], outer);
            const auto there = std::find_if(items.begin(), items.end(), [&](const Item& item) {
                return assembly != none && item.assembly == assembly;
            });
            if (there != items.end())
                there->columns.push_back(c);
            else
                items.push_back({.assembly = assembly, .columns = {c}});
        }
        for (Item& item : items) item.standing = standing_of(item);
        return items;
    }

    Standing standing_of(const Item& item) const {
        Standing first = columns_[item.columns.front()].standing;
        for (const std::size_t c : item.columns) first = std::min(first, columns_[c].standing);
        const auto is = [&](int rank) {
            return std::find_if(item.columns.begin(), item.columns.end(),
                                [&](std::size_t c) { return columns_[c].rank == rank; });
        };
        const auto actuator = is(rank_actuator);
        return actuator == item.columns.end() || is(rank_pump) != item.columns.end()
                   ? first
                   : columns_[*actuator].standing;
    }

    /// The items' places in their order, as the precedences between their columns want it.
    std::vector<std::size_t> one_after_another(const std::vector<Item>& items) const {
        const std::size_t count = items.size();
        const auto item_of = [&](std::size_t column) {
            std::size_t i = 0;
            while (i < count && std::find(items[i].columns.begin(), items[i].columns.end(),
                                          column) == items[i].columns.end())
                ++i;
            return i;
        };
        std::set<std::pair<std::size_t, std::size_t>> pairs;
        for (const Precedence& one : precedences_) {
            const std::size_t left = item_of(one.left);
            const std::size_t right = item_of(one.right);
            if (left != count && right != count && left != right) pairs.insert({left, right});
        }
        // What stands in a line between parts of one assembly cannot be between them.
        for (auto one = pairs.begin(); one != pairs.end();) {
            const auto back = pairs.find({one->second, one->first});
            if (back != pairs.end()) pairs.erase(back);
            one = back != pairs.end() ? pairs.erase(one) : std::next(one);
        }
        std::vector<int> waits(count, 0);
        for (const auto& [left, right] : pairs) ++waits[right];
        std::vector<bool> out(count, false);
        std::vector<std::size_t> order;
        for (std::size_t n = 0; n < count; ++n) {
            std::size_t next = count;
            for (std::size_t i = 0; i < count && next == count; ++i)
                if (!out[i] && waits[i] == 0) next = i;
            for (std::size_t i = 0; i < count && next == count; ++i)
                if (!out[i]) next = i;  // the stretches contradict each other
            out[next] = true;
            for (const auto& [left, right] : pairs)
                if (left == next) --waits[right];
            order.push_back(next);
        }
        return order;
    }

    const Sketch& sketch_;
    const std::vector<Column>& columns_;
    const std::vector<Precedence>& precedences_;
    std::vector<Index> home_ = {};
};

}  // namespace

Index assembly_of(const Sketch& sketch, const Column& column) {
    Index home = sketch.component(column.slots.front().parts.front()).assembly;
    for (const Slot& slot : column.slots)
        if (slot.zone != Zone::under)
            for (const int p : slot.parts)
                home = common_assembly(sketch.circuit(), home, sketch.component(p).assembly);
    return home;
}

std::vector<Column> ordered(const Sketch& sketch, std::vector<Column> columns,
                            const std::vector<Precedence>& precedences) {
    std::vector<Column> out;
    for (const std::size_t c : ColumnOrder(sketch, columns, precedences).find())
        out.push_back(std::move(columns[c]));
    return out;
}

}  // namespace loopwright
