// Part of a JSON text as a tree that knows where each value stands, built from a parser's events.
#pragma once

#include <cstdint>
#include <string>
#include <string_view>
#include <vector>

namespace scye {

struct JsonNode {
  enum class Kind : std::uint8_t { Null, Truth, Number, Text, Group, List };
  Kind kind = Kind::Null;
  double number = 0;
  std::string key{}, text{}; // of a member of a group; of a text
  std::vector<JsonNode> inside{};
  const char* at = nullptr;

  [[nodiscard]] const JsonNode* find(std::string_view name) const {
    for (const JsonNode& node : inside)
      if (node.key == name) return &node;
    return nullptr;
  }
};

// Values beyond `most` are refused, so that memory stays within bounds.
class JsonTree {
public:
  explicit JsonTree(std::size_t most) : most_(most) {}

  void key(std::string name) { key_ = std::move(name); }
  // Each returns false where there are too many values.
  bool value(JsonNode node, const char* at) { return add(std::move(node), at) != nullptr; }
  bool open(JsonNode::Kind kind, const char* at) {
    JsonNode node;
    node.kind = kind;
    JsonNode* added = add(std::move(node), at);
    if (added) open_.push_back(added);
    return added != nullptr;
  }
  // Whether the outermost bracket was closed.
  bool close() {
    open_.pop_back();
    return open_.empty();
  }
  [[nodiscard]] const JsonNode& root() const { return root_; }

private:
  JsonNode* add(JsonNode node, const char* at) {
    if (++count_ > most_) return nullptr;
    node.at = at;
    if (open_.empty()) {
      root_ = std::move(node);
      return &root_;
    }
    node.key = std::move(key_);
    key_.clear();
    // What is open is the last of its own list, so nothing that open_ points at moves.
    open_.back()->inside.push_back(std::move(node));
    return &open_.back()->inside.back();
  }

  std::size_t most_, count_ = 0;
  std::string key_;
  JsonNode root_;
  std::vector<JsonNode*> open_;
};

} // namespace scye
